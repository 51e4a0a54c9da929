// What the label is to be checked for; from memory, no safety data sheet.
const watched: readonly (readonly [RegExp, string])[] = [
  [/cadmium/i, 'cadmium'],
  [/cobalt/i, 'cobalt'],
  [/nickel/i, 'nickel'],
  [/lead\b/i, 'lead'],
  [/manganese/i, 'manganese'],
  [/zinc/i, 'zinc'],
  [/vanadium/i, 'vanadium'],
  [/chromium/i, 'chromium'],
];

const handling: Record<string, string> = {
  cadmium: 'keep brushes out of the mouth; do not sand or spray.',
  cobalt: 'keep brushes out of the mouth.',
  nickel: 'keep it off the skin.',
  lead: 'poisonous: better not used.',
  manganese: 'do not breathe its dust.',
  zinc: 'keep the rinse water out of ponds.',
  vanadium: 'do not breathe its dust.',
  chromium: 'do not breathe its dust.',
};

/** A short caution for the remembered hazard of a pigment, or null. Always ends at the label. */
export function cautionOf(hazard: string): string | null {
  const found = watched.find(([pattern]) => pattern.test(hazard));
  if (!found) return null;
  const metal = found[1];
  return `Contains ${metal}: ${handling[metal]} Check the label.`;
}

import { colourOfWashes } from './colour-of-washes.ts';
import optics from './data/pigment-optics.json';
import traits from './data/pigment-properties.json';
import { ladderLoads, type Paint, type PaintCard, type PaintProperties } from './paint.ts';
import { nothingKnown, type PigmentTraits } from './paint-traits.ts';

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
function cautionOf(hazard: string): string | null {
  const found = watched.find(([pattern]) => pattern.test(hazard));
  if (!found) return null;
  const metal = found[1];
  return `Contains ${metal}: ${handling[metal]} Check the label.`;
}

// The first word counts: 'O (transparent grades T)' is opaque, 'not listed ...' is unknown.
function transparencyOf(text: string): PaintProperties['transparency'] {
  const word = text.split(' ')[0];
  return word === 'T' || word === 'ST' || word === 'SO' || word === 'O' ? word : null;
}

const lightfastnessOf = (text: string): string | null =>
  /not listed|unsure/.test(text) ? null : text;

const threeSteps = (value: number): 0 | 1 | 2 | null =>
  value === 0 || value === 1 || value === 2 ? value : null;

const propertiesOf = (row: (typeof traits.pigments)[number]): PaintProperties => ({
  transparency: transparencyOf(row.transparency),
  staining: threeSteps(row.staining),
  granulation: threeSteps(row.granulation),
  lightfastness: lightfastnessOf(row.astmCategory),
  caution: cautionOf(row.hazard),
});

/**
 * What the trade says of common pigments, from memory (sources in data/pigment-properties.json).
 */
export const pigmentTable: readonly PigmentTraits[] = traits.pigments.map((row) => ({
  ci: row.ci,
  properties: propertiesOf(row),
}));

/** The properties of a built-in paint: those of its own row, else of its Colour Index name. */
function builtInProperties(id: string, ci: string): PaintProperties {
  const row =
    traits.pigments.find((pigment) => pigment.optics === id) ??
    traits.pigments.find((pigment) => pigment.ci === ci);
  return row ? propertiesOf(row) : nothingKnown;
}

/** Names as a painter says them: the table's remarks in brackets stay in the table. */
const nameOf = (name: string): string =>
  name
    .replace(/\s*\([^)]*\)/g, '')
    .replace(/, chromium$/, '')
    .replace(/, (\w+ shade)$/, ' $1'); // a comma would part it from the next paint of a list

/**
 * The built-in paints: K and S per unit load, 36 samples, from the published optics table (sources
 * in data/pigment-optics.json), properties from common practice (data/pigment-properties.json).
 */
export const paintBox: readonly Paint[] = optics.pigments.map(({ id, ci, name, K, S }) => {
  const index = ci.replace('?', '');
  return {
    id,
    revision: 1,
    name: nameOf(name),
    ci: [index],
    K,
    S,
    properties: builtInProperties(id, index),
  };
});

/** All that may be chosen from: the built-in paints and her own. */
export const knownPaints = (own: readonly Paint[] = []): readonly Paint[] => [...paintBox, ...own];

/** A paint as the screens show it: its ladder from palest to masstone on the default paper. */
export const paintCard = (paint: Paint): PaintCard => ({
  id: paint.id,
  name: paint.name,
  ci: paint.ci,
  properties: paint.properties,
  ...(paint.optics && { optics: paint.optics }),
  ...(paint.fromMemory && { fromMemory: paint.fromMemory }),
  ladder: ladderLoads.map((load) => colourOfWashes([{ paints: [paint], parts: [1], load }])),
});

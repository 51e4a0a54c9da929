/** Water one square metre takes up in a minute, g: soft-sized and hard-sized paper (ISO 535; guess). */
export const cobb = { soft: 40, hard: 20 } as const;

/** A film this thin lies in the tooth of the paper and no longer shines, g/m2 (guess). */
const toothGrams = 10;

/**
 * Minutes until the shine has gone: what lies on the sheet sinks in with the square root of time
 * (ISO 535 gives the first minute, Lucas-Washburn the root) and evaporates at `gramsPerHour`.
 * Water in g/m2; 0 where there is no shine to begin with.
 */
export function shineMinutes(waterGrams: number, cobb60: number, gramsPerHour: number): number {
  const film = waterGrams - toothGrams;
  if (film <= 0) return 0;
  // film = cobb sqrt(t) + rate t, a square in sqrt(t); written so that rate 0 does no harm.
  const rate = Math.max(0, gramsPerHour) / 60;
  const root = (2 * film) / (cobb60 + Math.sqrt(cobb60 * cobb60 + 4 * rate * film));
  return root * root;
}

/**
 * The trade's ladder from watery to stiff. The words are those of Zbukvic, J., Mastering Atmosphere and Mood in
 * Watercolor, 2002, common practice today (no standard exists); what they stand for is this project's own.
 */
export type Consistency = 'tea' | 'coffee' | 'milk' | 'cream' | 'butter';

interface Rung {
  readonly word: Consistency;
  /** ml of tube paint to 1 ml of water: where the word begins, and what is usual for it. */
  readonly from: number;
  readonly usual: number;
  /** Liquid a brush leaves of it, ml on a square metre. */
  readonly film: number;
}

/**
 * Own figures from practice: a pea, 0.2 ml, in a tablespoon, 15 ml, is tea. A factor of 1.5 either way
 * (data/pigment-optics.json, `consistency`).
 */
const rungs: readonly Rung[] = [
  { word: 'tea', from: 0, usual: 0.01, film: 100 },
  { word: 'coffee', from: 0.015, usual: 0.03, film: 90 },
  { word: 'milk', from: 0.05, usual: 0.1, film: 70 },
  { word: 'cream', from: 0.2, usual: 0.4, film: 40 },
  { word: 'butter', from: 0.8, usual: 2, film: 25 },
];

/** Liquid a brush leaves, ml/m2, of paint with so much water: between the rungs by the logarithm. */
function filmOf(concentration: number): number {
  const after = rungs.findIndex(({ usual }) => usual >= concentration);
  if (after === 0) return rungs[0].film;
  if (after < 0) return rungs[rungs.length - 1].film;
  const [one, two] = [rungs[after - 1], rungs[after]];
  const part = Math.log(concentration / one.usual) / Math.log(two.usual / one.usual);
  return one.film + part * (two.film - one.film);
}

/** Tube paint that one wash of this concentration leaves, ml/m2. Grows with it, up to the film of neat paint. */
export const loadOf = (concentration: number): number =>
  filmOf(concentration) / (1 + 1 / concentration);

/** From this much paint to the water on it is squeezed, not mixed (own). */
const neat = 10;

/**
 * How a load, ml of tube paint on a square metre, is mixed: ml of paint to 1 ml of water. Infinity where it takes
 * paint without water. The inverse of what a brush leaves of it.
 */
export function concentrationOf(load: number): number {
  if (load >= loadOf(neat)) return Number.POSITIVE_INFINITY;
  let [low, high] = [0, neat];
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (loadOf(middle) < load) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The load at which a word begins, ml/m2. */
const loadFrom = (word: Consistency): number =>
  loadOf(rungs.find((rung) => rung.word === word)?.from ?? 0);

/** The usual load of a word, ml/m2. */
export const usualLoad = (word: Consistency): number =>
  loadOf(rungs.find((rung) => rung.word === word)?.usual ?? 0);

/** From these loads on paint is cream, which covers what lies below, and butter, stiff. */
export const creamFrom = loadFrom('cream');
export const butterFrom = loadFrom('butter');

const limits = rungs.map(({ word }) => [loadFrom(word), word] as const).reverse();

/** The word for a load, ml of tube paint on a square metre. */
export const consistencyOf = (load: number): Consistency =>
  limits.find(([from]) => load >= from)?.[1] ?? 'tea';

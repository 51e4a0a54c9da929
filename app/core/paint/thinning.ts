import { loadOf } from './consistency.ts';

/** So many parts of a puddle with so many of water. */
export interface Thinning {
  readonly puddle: number;
  readonly water: number;
}

/** How far what a concentration leaves on the sheet is from a load, ml/m2: the logarithm of their ratio. */
export const missOf = (concentration: number, load: number): number =>
  Math.abs(Math.log(loadOf(concentration) / load));

const muchWater = [9, 10, 11, 12, 14, 16, 18, 20, 25, 30, 35, 40, 50, 60, 80, 100];

/** Parts of a puddle and of water that can be counted out: simplest first, then with ever more water. */
const thinnings: readonly Thinning[] = [
  ...Array.from({ length: 8 }, (_, n) => n + 2).flatMap((sum) =>
    Array.from({ length: sum - 1 }, (_, n) => ({ puddle: sum - 1 - n, water: n + 1 })),
  ),
  ...muchWater.map((water) => ({ puddle: 1, water })),
];

/** Nearer than this no hand measures: then the simplest does (own). */
const nearEnough = 0.025;

/** ml of paint to 1 ml of water in a puddle after that. */
const thinned = (concentration: number, { puddle, water }: Thinning): number =>
  1 / (1 / concentration + (water / puddle) * (1 + 1 / concentration));

/**
 * How a puddle of that concentration (ml of paint to 1 ml of water, Infinity without water) comes to a load, ml/m2, by
 * water; null where it is used as it is.
 */
export function thinningFor(concentration: number, load: number): Thinning | null {
  const choices = [null, ...thinnings].map((thinning) => ({
    thinning,
    miss: missOf(thinning ? thinned(concentration, thinning) : concentration, load),
  }));
  const best =
    choices.find(({ miss }) => miss <= nearEnough) ??
    choices.reduce((least, each) => (each.miss < least.miss ? each : least));
  return best.thinning;
}

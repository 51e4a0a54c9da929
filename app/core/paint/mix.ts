import type { Lab } from '../colour/lab.ts';
import { butterFrom, creamFrom, mostParts } from '../limits.ts';

export interface Part {
  /** Paint id. */
  readonly paint: string;
  /** Whole parts; those of one mix sum to at most `mostParts`. */
  readonly parts: number;
}

/**
 * The trade's ladder from watery to stiff. The words are common practice (no standard exists);
 * the limits in load are this project's own.
 */
export type Consistency = 'tea' | 'coffee' | 'milk' | 'cream' | 'butter';

/** load: amount of paint per area, 1 = the pale wash of the optics table. */
export function consistencyOf(load: number): Consistency {
  if (load < 0.7) return 'tea';
  if (load < 2) return 'coffee';
  if (load < creamFrom) return 'milk';
  if (load < butterFrom) return 'cream';
  return 'butter';
}

export const consistencySign: Record<Consistency, string> = {
  tea: 'runs like water, the bottom of the well shows',
  coffee: 'runs, the bottom is hard to see',
  milk: 'moves slowly and shimmers',
  cream: 'does not run when you tilt the palette',
  butter: 'stiff, as from the tube',
};

/** Parts of the first paint to the second. */
export const chartRatios = [
  [3, 1],
  [1, 1],
  [1, 3],
] as const;

/** Loads of a chart, one each of tea, milk and cream. */
export const chartLoads = [0.5, 3, 10] as const;

/** One swatch: dry colour of a mix at a load on the default paper. */
export interface ChartSwatch {
  readonly parts: readonly Part[];
  readonly load: number;
  readonly consistency: Consistency;
  readonly dry: Lab;
}

/** A pair of paints: for every ratio, from palest to strongest. */
export interface ChartPair {
  readonly paints: readonly [string, string];
  readonly ratios: readonly (readonly ChartSwatch[])[];
}

export interface ChartDark extends ChartSwatch {
  readonly tint: 'neutral' | 'warm' | 'cool';
}

export interface MixingChart {
  readonly pairs: readonly ChartPair[];
  /** The darkest mixes of two and three paints, darkest first. */
  readonly darks: readonly ChartDark[];
}

const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));

function* compositions(count: number, left: number): Generator<number[]> {
  if (count === 0) {
    yield [];
    return;
  }
  for (let first = 1; first <= left - (count - 1); first++) {
    for (const rest of compositions(count - 1, left - first)) yield [first, ...rest];
  }
}

/**
 * All ways to mix `count` paints (1..3) in whole parts of sum at most 8, each way once: 2 + 2 is
 * 1 + 1. One paint: 1 way; two: 21; three: 52.
 */
export function wholeParts(count: number): number[][] {
  return [...compositions(count, mostParts)].filter((parts) => parts.reduce(divisor) === 1);
}

/** The ways to go from a mix, in the order they are offered. */
export const neighbourWays = [
  'half a value lighter',
  'half a value darker',
  'warmer',
  'cooler',
  'more yellow',
  'more red',
  'more blue',
  'more green',
  'duller',
  'clearer',
] as const;

export type NeighbourWay = (typeof neighbourWays)[number];

/** Paint ids with whole parts, and the total load they are laid at. */
export interface LaidMix {
  readonly parts: readonly Part[];
  readonly load: number;
}

/** A mix next to another one, in one direction. */
export interface MixNeighbour extends LaidMix {
  readonly way: NeighbourWay;
  readonly consistency: Consistency;
  /** Dry over what lies below, surface floor included; and wet. */
  readonly dry: Lab;
  readonly wet: Lab;
  /** What to add to the puddle, in words. */
  readonly add: string;
}

export interface MixNeighbours {
  /** The mix itself, over the same ground. */
  readonly dry: Lab;
  readonly wet: Lab;
  readonly neighbours: readonly MixNeighbour[];
}

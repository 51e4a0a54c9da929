import type { Lab } from '../colour/lab.ts';
import { mostParts, mostToOne } from '../limits.ts';
import type { Consistency } from './consistency.ts';

export interface Part {
  /** Paint id. */
  readonly paint: string;
  /** Whole parts of tube paint by volume; those of one mix sum to at most `mostParts`. */
  readonly parts: number;
}

/** Parts of the first paint to the second. */
export const chartRatios = [
  [3, 1],
  [1, 1],
  [1, 3],
] as const;

/** The strengths of a chart, palest first. */
export const chartStrengths = ['tea', 'milk', 'cream'] as const satisfies readonly Consistency[];

/** One swatch: dry colour of so much of a mix, ml/m2, on the default paper. */
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
 * All ways to mix `count` paints (1..3) in whole parts of sum at most 8 and at most 6 to 1, each way once: 2 + 2 is
 * 1 + 1. One paint: 1 way; two: 19; three: 52.
 */
export function wholeParts(count: number): number[][] {
  return [...compositions(count, mostParts)].filter(
    (parts) => parts.reduce(divisor) === 1 && Math.max(...parts) <= mostToOne * Math.min(...parts),
  );
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

/** Paint ids with whole parts, and how much of the mix is laid, ml/m2. */
export interface LaidMix {
  readonly parts: readonly Part[];
  readonly load: number;
}

/** What is added to a puddle: water or its own paint, from one load to another; or one part of a paint to so many of it. */
export type Addition =
  | { readonly change: 'strength'; readonly from: number; readonly to: number }
  | {
      readonly change: 'part';
      /** By name. */
      readonly paint: string;
      /** The puddle holds it already. */
      readonly isMore: boolean;
      readonly to: number;
    };

/** A mix next to another one, in one direction. */
export interface MixNeighbour extends LaidMix {
  readonly way: NeighbourWay;
  readonly consistency: Consistency;
  /** Dry over what lies below, seen through the surface; and wet. */
  readonly dry: Lab;
  readonly wet: Lab;
  readonly add: Addition;
}

export interface MixNeighbours {
  /** The mix itself, over the same ground. */
  readonly dry: Lab;
  readonly wet: Lab;
  readonly neighbours: readonly MixNeighbour[];
}

import type { Consistency } from './consistency.ts';
import type { Lab } from './lab.ts';
import type { Part } from './part.ts';

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

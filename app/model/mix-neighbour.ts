import type { Consistency } from './consistency.ts';
import type { Lab } from './lab.ts';
import type { Part } from './part.ts';

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

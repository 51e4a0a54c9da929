import { bandCount } from '../../colour/spectrum.ts';
import { combinations } from '../../numeric/combinations.ts';
import { mixSpectra, writeLayerBand } from '../../paint/layer.ts';
import { wholeParts } from '../../paint/mix.ts';
import type { Paint } from '../../paint/paint.ts';
import type { Checkpoint } from '../../palette/checkpoint.ts';

/** Loads a puddle is first looked at, 1/16 to 32 in half octaves. */
export const lookLoads: readonly number[] = Array.from({ length: 19 }, (_, i) => 2 ** (i / 2 - 4));

/** Paints in whole parts, and their layers at `lookLoads`. */
export interface PuddleOption {
  /** Indices into the palette. */
  readonly members: readonly number[];
  /** The same as bits, to see quickly whether a family may use it. */
  readonly mask: number;
  readonly parts: readonly number[];
  /** Per unit of total load, 36 bands. */
  readonly K: Float64Array;
  readonly S: Float64Array;
  /** R0 and T of the layer at every look load: loads x 36. */
  readonly back: Float32Array;
  readonly through: Float32Array;
}

function option(paints: readonly Paint[], members: readonly number[], parts: readonly number[]) {
  const chosen = members.map((member) => paints[member]);
  const { K, S } = mixSpectra(chosen, parts);
  const back = new Float32Array(lookLoads.length * bandCount);
  const through = new Float32Array(lookLoads.length * bandCount);
  const pair = new Float64Array(2);
  for (const [n, load] of lookLoads.entries()) {
    for (let i = 0; i < bandCount; i++) {
      writeLayerBand(K[i] * load, S[i] * load, pair, 0);
      back[n * bandCount + i] = pair[0];
      through[n * bandCount + i] = pair[1];
    }
  }
  const mask = members.reduce((bits, member) => bits | (1 << member), 0);
  return { members, mask, parts, K, S, back, through };
}

const kept = new WeakMap<readonly Paint[], PuddleOption[]>();

/**
 * Every mix of at most three paints of a palette in whole parts of sum at most 8. Kept with the list of paints:
 * one palette is solved for several passages and numbers of washes.
 */
export async function puddleOptions(
  paints: readonly Paint[],
  checkpoint: Checkpoint,
): Promise<readonly PuddleOption[]> {
  const known = kept.get(paints);
  if (known) return known;
  const options: PuddleOption[] = [];
  for (const size of [1, 2, 3]) {
    for (const members of combinations(paints.length, size)) {
      await checkpoint(0);
      for (const parts of wholeParts(size)) options.push(option(paints, members, parts));
    }
  }
  kept.set(paints, options);
  return options;
}

import type { Paint } from '../../../app/model/paint.ts';
import { bandCount } from '../optics/wavelengths.ts';
import type { Checkpoint } from './checkpoint.ts';
import { combinations } from './combinations.ts';
import { halfOctaveLoads } from './half-octave-loads.ts';
import { MixLadder } from './mix-ladder.ts';
import { wholeParts } from './whole-parts.ts';

/** Most paints in one mix. */
export const largestMix = 3;

/** All mixes of one group of one to three paints, as single washes on the default paper. */
export interface MixGroup {
  /** Indices into `MixLibrary.paints`, rising. */
  readonly members: readonly number[];
  /** Of every mix, parts (as `wholeParts` lists them) x loads: L* x 256 ... */
  readonly lightness: Int16Array;
  /** ... and a*, b* x 256, held within -128..128. */
  readonly chroma: Int16Array;
  /** L* of the darkest. */
  readonly darkest: number;
}

/** L*, a*, b* are kept as whole numbers of this part of a unit. */
export const labSteps = 256;

export interface MixLibrary {
  readonly paints: readonly Paint[];
  /** Singles, pairs, triples, in this order. */
  readonly groups: readonly MixGroup[];
}

const held = (value: number): number =>
  Math.min(32767, Math.max(-32768, Math.round(value * labSteps)));

// Read once, for the loops.
const loads = halfOctaveLoads.length;
const bands = bandCount;
const waysOf = [1, 2, 3].map(wholeParts);
const ladder = new MixLadder();
const K = new Float64Array(bands);
const S = new Float64Array(bands);

/** K and S of a paint as the loops want them: read from plain lists they take four times as long. */
const typed = new WeakMap<Paint, readonly [K: Float64Array, S: Float64Array]>();

function spectraOf(paint: Paint): readonly [K: Float64Array, S: Float64Array] {
  const kept = typed.get(paint) ?? [Float64Array.from(paint.K), Float64Array.from(paint.S)];
  typed.set(paint, kept);
  return kept;
}

/** Duncan (1940), as `mixSpectra`, into the work space. */
function mix(
  spectra: readonly (readonly [Float64Array, Float64Array])[],
  parts: readonly number[],
): void {
  K.fill(0);
  S.fill(0);
  const sum = parts.reduce((all, part) => all + part, 0);
  for (let n = 0; n < spectra.length; n++) {
    const share = (parts[n] as number) / sum;
    const [ownK, ownS] = spectra[n] as readonly [Float64Array, Float64Array];
    for (let i = 0; i < bands; i++) {
      K[i] = (K[i] as number) + share * (ownK[i] as number);
      S[i] = (S[i] as number) + share * (ownS[i] as number);
    }
  }
}

/** The mixes of one group of paints. */
export function mixGroup(paints: readonly Paint[], members: readonly number[]): MixGroup {
  const ways = waysOf[members.length - 1] as number[][];
  const chosen = members.map((member) => spectraOf(paints[member] as Paint));
  const lightness = new Int16Array(ways.length * loads);
  const chroma = new Int16Array(2 * lightness.length);
  let darkest = 100;
  for (const [way, parts] of ways.entries()) {
    mix(chosen, parts);
    ladder.write(K, S);
    for (let n = 0; n < loads; n++) {
      const at = way * loads + n;
      const l = ladder.lab[3 * n] as number;
      lightness[at] = held(l);
      chroma[2 * at] = held(ladder.lab[3 * n + 1] as number);
      chroma[2 * at + 1] = held(ladder.lab[3 * n + 2] as number);
      if (l < darkest) darkest = l;
    }
  }
  return { members, lightness, chroma, darkest };
}

/** Groups between two checkpoints: some milliseconds of work. */
const stretch = 10;

/**
 * Every mix of at most three of the paints, in whole parts of sum at most 8, at 15 half-octave loads.
 * Does not depend on the picture: build it once for a paint box and keep it. 6 bytes a mix and load:
 * 20 MB for 30 paints.
 */
export async function buildMixLibrary(
  paints: readonly Paint[],
  checkpoint: Checkpoint,
  groupOf: (members: readonly number[]) => MixGroup = (members) => mixGroup(paints, members),
): Promise<MixLibrary> {
  const sets = [1, 2, 3].flatMap((size) => combinations(paints.length, size));
  const groups: MixGroup[] = [];
  for (const [n, members] of sets.entries()) {
    if (n % stretch === 0) await checkpoint(n / sets.length);
    groups.push(groupOf(members));
  }
  return { paints, groups };
}

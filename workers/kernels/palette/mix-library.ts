import type { Paint } from '../../../app/model/paint.ts';
import { defaultPaper } from '../optics/default-paper.ts';
import { mixSpectra } from '../optics/mix-spectra.ts';
import type { Checkpoint } from './checkpoint.ts';
import { combinations } from './combinations.ts';
import { halfOctaveLoads } from './half-octave-loads.ts';
import { writeMixLadder } from './mix-ladder.ts';
import { wholeParts } from './whole-parts.ts';

/** All mixes of one group of one to three paints, as single washes on the default paper. */
export interface MixGroup {
  /** Indices into `MixLibrary.paints`, rising. */
  readonly members: readonly number[];
  /** L*, a*, b* of every mix: parts (as `wholeParts` lists them) x loads x 3. */
  readonly lab: Float32Array;
  /** L* of the darkest. */
  readonly darkest: number;
}

export interface MixLibrary {
  readonly paints: readonly Paint[];
  /** Most paints in one mix. */
  readonly most: number;
  readonly groups: readonly MixGroup[];
}

function darkestIn(lab: Float32Array): number {
  let darkest = 100;
  for (let i = 0; i < lab.length; i += 3) darkest = Math.min(darkest, lab[i] as number);
  return darkest;
}

/** The mixes of one group of paints. */
export function mixGroup(paints: readonly Paint[], members: readonly number[]): MixGroup {
  const ways = wholeParts(members.length);
  const chosen = members.map((member) => paints[member] as Paint);
  const lab = new Float32Array(ways.length * halfOctaveLoads.length * 3);
  for (const [way, parts] of ways.entries()) {
    const { K, S } = mixSpectra(chosen, parts);
    writeMixLadder(K, S, defaultPaper, lab, way * halfOctaveLoads.length * 3);
  }
  return { members, lab, darkest: darkestIn(lab) };
}

/** Groups between two checkpoints: some milliseconds of work. */
const stretch = 40;

/**
 * Every mix of at most `most` of the paints, in whole parts of sum at most 8, at 15 half-octave loads.
 * Does not depend on the picture: build it once for a paint box and keep it.
 */
export async function buildMixLibrary(
  paints: readonly Paint[],
  most: number,
  checkpoint: Checkpoint,
): Promise<MixLibrary> {
  const sets = [1, 2, 3].slice(0, most).flatMap((size) => combinations(paints.length, size));
  const groups: MixGroup[] = [];
  for (const [n, members] of sets.entries()) {
    if (n % stretch === 0) await checkpoint(n / sets.length);
    groups.push(mixGroup(paints, members));
  }
  return { paints, most, groups };
}

/** L* of the darkest mix of a library; 100 without paints. */
export const darkestOfLibrary = ({ groups }: MixLibrary): number =>
  groups.reduce((least, group) => Math.min(least, group.darkest), 100);

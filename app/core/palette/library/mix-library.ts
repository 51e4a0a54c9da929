import type { Lab } from '../../colour/lab.ts';
import { largestPalette, mixSizes } from '../../limits.ts';
import { combinations } from '../../numeric/combinations.ts';
import { LastAnswers } from '../../numeric/memo.ts';
import { isWhiteOrBlack, opticsKey, type Paint } from '../../paint/paint.ts';
import { paintBox, placeAmongOwned } from '../../paint/paint-box.ts';
import type { Checkpoint } from '../checkpoint.ts';
import { GroupMixer, type MixGroup } from './group-mixer.ts';

const pairSizes: readonly number[] = [1, 2];

/** L* of the darkest that mixes of at most two of these paints reach on white paper, washes over each other. */
export function darkestOf(paints: readonly Paint[]): number {
  const mixer = new GroupMixer(paints);
  return setsOf(paints).reduce((least, set) => Math.min(least, mixer.darkest(set)), 100);
}

const setsOf = (paints: readonly Paint[]): number[][] =>
  pairSizes.flatMap((size) => combinations(paints.length, size));

/** Groups between two checkpoints: some milliseconds of work. */
const stretch = 40;

/** As `darkestOf`, with pauses (a whole box would hold a cancel up too long), reusing `known` where it is given. */
export async function darkestInSteps(
  paints: readonly Paint[],
  checkpoint: Checkpoint,
  known: LastAnswers<number>,
): Promise<number> {
  const key = JSON.stringify(paints.map(opticsKey));
  const before = known.get(key);
  if (before !== undefined) return before;
  const mixer = new GroupMixer(paints);
  const sets = setsOf(paints);
  let darkest = 100;
  for (const [n, set] of sets.entries()) {
    if (n % stretch === 0) await checkpoint(n / sets.length);
    darkest = Math.min(darkest, mixer.darkest(set));
  }
  known.keep(key, darkest);
  return darkest;
}

/** The paints a reading assumes for its darkest mix: those most boxes hold, without whites and blacks. */
export const usualPaints: readonly Paint[] = paintBox.filter(
  ({ id, ci }) => placeAmongOwned(id) >= 0 && !isWhiteOrBlack(ci),
);

export interface MixLibrary {
  readonly paints: readonly Paint[];
  /** Singles, pairs, triples, in this order. */
  readonly groups: readonly MixGroup[];
}

/** Groups between two checkpoints: some milliseconds of work. */
const groupsAtATime = 10;

/** From more paints than this on all mixes of three would take hundreds of MB: they are not searched exactly (own). */
export const mostSearched = 40;

/**
 * Every mix of at most three (or as `sizes` says) of the paints, in whole parts of sum at most 8, at 15 shares of a
 * full coat. Does not depend on the picture: build it once for a paint box and keep it. 6 bytes a mix and load:
 * 20 MB for 30 paints.
 */
export async function buildMixLibrary(
  paints: readonly Paint[],
  checkpoint: Checkpoint,
  groupOf?: (members: readonly number[], mixer: GroupMixer) => MixGroup,
  sizes = mixSizes,
): Promise<MixLibrary> {
  const mixer = new GroupMixer(paints);
  const sets = sizes.flatMap((size) => combinations(paints.length, size));
  const groups: MixGroup[] = [];
  for (const [n, members] of sets.entries()) {
    if (n % groupsAtATime === 0) await checkpoint(n / sets.length);
    groups.push(groupOf?.(members, mixer) ?? mixer.mix(members));
  }
  return { paints, groups };
}

const sameBox = (one: readonly Paint[], two: readonly Paint[]): boolean =>
  one.length === two.length && one.every((paint, i) => paint === two[i]);

/**
 * Rows of costs by the mixes they are of (`MixGroup.lightness`), of one list of colours: a search among other paints of
 * the same box, or once more of a shortlist, has most of them in common with the one before.
 */
export type KnownCosts = WeakMap<Int16Array, Float32Array>;

/**
 * Keeps the library of the last box asked for: it is the dear part of a search and the same for every
 * picture. Another box takes over the mixes of the paints it has in common with it, and so does a
 * second search those of a first that is not yet through.
 */
export class LibraryMemo {
  #kept: MixLibrary | undefined;
  #groups = new Map<string, MixGroup>();
  #pairs: MixLibrary | undefined;
  readonly #costs = new LastAnswers<KnownCosts>(2);

  async libraryOf(paints: readonly Paint[], checkpoint: Checkpoint): Promise<MixLibrary> {
    if (this.#kept && sameBox(this.#kept.paints, paints)) return this.#kept;
    const keyOf = (members: readonly number[]): string =>
      members.map((n) => opticsKey(paints[n])).join();
    const built = await buildMixLibrary(paints, checkpoint, (members, mixer) => {
      const key = keyOf(members);
      const group = this.#groups.get(key) ?? mixer.mix(members);
      this.#groups.set(key, group);
      return { ...group, members };
    });
    // The library of a few chosen paints is quickly built and must not displace the box's.
    if (paints.length > largestPalette || !this.#kept) {
      this.#kept = built;
      this.#groups = new Map(built.groups.map((group) => [keyOf(group.members), group]));
    }
    return built;
  }

  /** The mixes of one and two paints alone, of a box too large for more. */
  async pairsOf(paints: readonly Paint[], checkpoint: Checkpoint): Promise<MixLibrary> {
    if (this.#pairs && sameBox(this.#pairs.paints, paints)) return this.#pairs;
    this.#pairs = await buildMixLibrary(paints, checkpoint, undefined, pairSizes);
    return this.#pairs;
  }

  /** What mixes of these libraries cost by these colours, as far as a search has found out; it adds what it finds. */
  costsFor(colours: readonly Lab[]): KnownCosts {
    const asking = JSON.stringify(colours);
    const known = this.#costs.get(asking) ?? new WeakMap();
    this.#costs.keep(asking, known);
    return known;
  }

  /** What a search among these paints will begin with, ahead of need. */
  async warm(paints: readonly Paint[], checkpoint: Checkpoint): Promise<void> {
    await (paints.length > mostSearched
      ? this.pairsOf(paints, checkpoint)
      : this.libraryOf(paints, checkpoint));
  }
}

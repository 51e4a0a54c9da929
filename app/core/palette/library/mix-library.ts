import { spectrumSize, weightX, weightY, weightZ, writeLabOfSums } from '../../colour/spectrum.ts';
import { drySurface } from '../../colour/surface.ts';
import { largestPalette, mixSizes, searchShares } from '../../limits.ts';
import { combinations } from '../../numeric/combinations.ts';
import type { LastAnswers } from '../../numeric/memo.ts';
import { defaultPaper } from '../../paint/colour-of-washes.ts';
import { escapingOver, reflectionsBetween } from '../../paint/layer.ts';
import { wholeParts } from '../../paint/mix.ts';
import { MixSensitivity } from '../../paint/mix-sensitivity.ts';
import { coatOf, isWhiteOrBlack, opticsKey, type Paint, strengthOf } from '../../paint/paint.ts';
import { paintBox, placeAmongOwned } from '../../paint/paint-box.ts';
import type { Checkpoint } from '../checkpoint.ts';

const pairSizes: readonly number[] = [1, 2];

/** L* of the darkest that mixes of at most two of these paints reach on white paper, washes over each other. */
export function darkestOf(paints: readonly Paint[]): number {
  const mixer = new GroupMixer(paints);
  return setsOf(paints).reduce((least, set) => Math.min(least, mixer.mix(set).darkest), 100);
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
    darkest = Math.min(darkest, mixer.mix(set).darkest);
  }
  known.keep(key, darkest);
  return darkest;
}

/** The paints a reading assumes for its darkest mix: those most boxes hold, without whites and blacks. */
export const usualPaints: readonly Paint[] = paintBox.filter(
  ({ id, ci }) => placeAmongOwned(id) >= 0 && !isWhiteOrBlack(ci),
);

// Read once: the loops below are the hottest of all, and some ways to load a file look imports up each time.
const paper = defaultPaper;
const samples = spectrumSize;
const seenOver = escapingOver;
const { k2 } = drySurface;
const between = reflectionsBetween;
const [toX, toY, toZ] = [weightX, weightY, weightZ];

/** Colours of one mix from its palest to a full coat, and the work space for it. */
class MixLadder {
  /** L*, a*, b* at the 15 shares of a full coat, dry, on the default paper. */
  readonly lab = new Float64Array(3 * searchShares.length);
  readonly #back = new Float64Array(spectrumSize);
  readonly #through = new Float64Array(spectrumSize);

  /** K and S are per ml/m2, 36 samples; `coat` is ml/m2. Fills `lab`. */
  write(K: Float64Array, S: Float64Array, coat: number): void {
    for (const start of [0, 1]) {
      this.#begin(K, S, searchShares[start] * coat);
      for (let step = start; step < searchShares.length; step += 2) this.#look(3 * step);
    }
  }

  /** L* of one layer, dry, on the default paper. */
  lightnessOf(K: Float64Array, S: Float64Array, load: number): number {
    this.#begin(K, S, load);
    this.#look(0);
    return this.lab[0];
  }

  // The layer of `writeLayerSample`, with its three exponentials made of one.
  #begin(K: Float64Array, S: Float64Array, load: number): void {
    const back = this.#back;
    const through = this.#through;
    for (let i = 0; i < samples; i++) {
      const kx = K[i] * load;
      const sx = S[i] * load;
      const w = Math.sqrt(kx * (kx + 2 * sx));
      const fall = Math.exp(-w);
      const twice = fall * fall;
      const shrink = w > 1e-4 ? (1 - twice) / w : 2 - 2 * w;
      const divisor = (kx + sx) * shrink + 1 + twice;
      back[i] = (sx * shrink) / divisor;
      through[i] = (2 * fall) / divisor;
    }
  }

  // Lays the layer on the paper, and then on itself for the load after next (Kubelka 1954).
  #look(offset: number): void {
    const back = this.#back;
    const through = this.#through;
    let x = 0;
    let y = 0;
    let z = 0;
    for (let i = 0; i < samples; i++) {
      const r = back[i];
      const t = through[i];
      const seen = seenOver(r, t, paper[i], k2);
      x += seen * toX[i];
      y += seen * toY[i];
      z += seen * toZ[i];
      const twice = (t * t) / between(r, r);
      back[i] = r + twice * r;
      through[i] = twice;
    }
    writeLabOfSums(x, y, z, drySurface, this.lab, offset);
  }
}

/** All mixes of one group of one to three paints, as single washes on the default paper. */
export interface MixGroup {
  /** Indices into `MixLibrary.paints`, rising. */
  readonly members: readonly number[];
  /** Of every mix, parts (as `wholeParts` lists them) x shares of a full coat: L* x 256 ... */
  readonly lightness: Int16Array;
  /** ... and a*, b* x 256, held within -128..128. */
  readonly chroma: Int16Array;
  /** Of every mix, as `MixSensitivity`. */
  readonly sensitivity: Float32Array;
  /** L* of the darkest mix where it lies `coatsInDarks` thick. */
  readonly darkest: number;
}

/** Full coats in the darks: a wash as thick as it goes, over what earlier ones left of the same (own). */
const coatsInDarks = 1.5;

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
const loads = searchShares.length;
const waysOf = mixSizes.map(wholeParts);

/** K and S per ml/m2 of the paint, and its full coat, ml/m2. */
type TypedSpectra = readonly [K: Float64Array, S: Float64Array, coat: number];

/** Mixes groups of some paints, one after the other in the same work space. */
export class GroupMixer {
  /** As the loops want them: read from plain lists they take four times as long. */
  readonly #spectra: readonly TypedSpectra[];
  readonly #ladder = new MixLadder();
  readonly #sensitivity = new MixSensitivity();
  readonly #K = new Float64Array(samples);
  readonly #S = new Float64Array(samples);

  constructor(paints: readonly Paint[]) {
    this.#spectra = paints.map((paint) => {
      const perMl = (sample: number): number => sample * strengthOf(paint);
      return [Float64Array.from(paint.K, perMl), Float64Array.from(paint.S, perMl), coatOf(paint)];
    });
  }

  /** The mixes of one group: `members` are indices into the paints, rising. */
  mix(members: readonly number[]): MixGroup {
    const ways = waysOf[members.length - 1];
    const chosen = members.map((member) => this.#spectra[member]);
    const lightness = new Int16Array(ways.length * loads);
    const chroma = new Int16Array(2 * lightness.length);
    const sensitivity = new Float32Array(ways.length);
    const { lab } = this.#ladder;
    let darkestWay = 0;
    let least = 100;
    for (const [way, parts] of ways.entries()) {
      const coat = this.#add(chosen, parts);
      this.#ladder.write(this.#K, this.#S, coat);
      sensitivity[way] = this.#sensitivity.of(this.#K, this.#S, coat, chosen, parts);
      for (let n = 0; n < loads; n++) {
        const index = way * loads + n;
        const l = lab[3 * n];
        lightness[index] = held(l);
        chroma[2 * index] = held(lab[3 * n + 1]);
        chroma[2 * index + 1] = held(lab[3 * n + 2]);
        if (l >= least) continue;
        least = l;
        darkestWay = way;
      }
    }
    const coat = this.#add(chosen, ways[darkestWay]);
    const darkest = this.#ladder.lightnessOf(this.#K, this.#S, coatsInDarks * coat);
    return { members, lightness, chroma, sensitivity, darkest };
  }

  /** Duncan (1940), as `mixSpectra`, into the work space; returns the full coat. */
  #add(spectra: readonly TypedSpectra[], parts: readonly number[]): number {
    let coat = 0;
    const K = this.#K.fill(0);
    const S = this.#S.fill(0);
    const sum = parts.reduce((all, part) => all + part, 0);
    for (let n = 0; n < spectra.length; n++) {
      const share = parts[n] / sum;
      const [ownK, ownS, ownCoat] = spectra[n];
      coat += share * ownCoat;
      for (let i = 0; i < samples; i++) {
        K[i] = K[i] + share * ownK[i];
        S[i] = S[i] + share * ownS[i];
      }
    }
    return coat;
  }
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
 * Keeps the library of the last box asked for: it is the dear part of a search and the same for every
 * picture. Another box takes over the mixes of the paints it has in common with it, and so does a
 * second search those of a first that is not yet through.
 */
export class LibraryMemo {
  #kept: MixLibrary | undefined;
  #groups = new Map<string, MixGroup>();
  #pairs: MixLibrary | undefined;

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

  /** What a search among these paints will begin with, ahead of need. */
  async warm(paints: readonly Paint[], checkpoint: Checkpoint): Promise<void> {
    await (paints.length > mostSearched
      ? this.pairsOf(paints, checkpoint)
      : this.libraryOf(paints, checkpoint));
  }
}

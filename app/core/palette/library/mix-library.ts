import {
  bandCount,
  surfaceFloor,
  weightX,
  weightY,
  weightZ,
  writeLabOfSums,
} from '../../colour/spectrum.ts';
import { combinations } from '../../numeric/combinations.ts';
import { defaultPaper } from '../../paint/colour-of-washes.ts';
import { wholeParts } from '../../paint/mix.ts';
import type { Paint } from '../../paint/paint.ts';
import type { Checkpoint } from '../checkpoint.ts';
import { largestPalette } from '../paints-allowed.ts';

/** Loads searched for a single wash: 0.25 to 32 in half octaves, 15 of them. */
export const halfOctaveLoads: readonly number[] = Array.from(
  { length: 15 },
  (_, i) => 0.25 * 2 ** (i / 2),
);

// Read once: the loops below are the hottest of all, and some ways to load a file look imports up each time.
const paper = defaultPaper;
const bands = bandCount;
const [toX, toY, toZ] = [weightX, weightY, weightZ];

/** Colours of one mix at all loads, and the work space for it. */
class MixLadder {
  /** L*, a*, b* at the 15 half-octave loads, dry, on the default paper. */
  readonly lab = new Float64Array(3 * halfOctaveLoads.length);
  readonly #back = new Float64Array(bandCount);
  readonly #through = new Float64Array(bandCount);

  /** K and S are per unit load, 36 bands. Fills `lab`. */
  write(K: Float64Array, S: Float64Array): void {
    for (const start of [0, 1]) {
      this.#begin(K, S, halfOctaveLoads[start]);
      for (let step = start; step < halfOctaveLoads.length; step += 2) this.#look(3 * step);
    }
  }

  // The layer of `writeLayerBand`, with its three exponentials made of one.
  #begin(K: Float64Array, S: Float64Array, load: number): void {
    const back = this.#back;
    const through = this.#through;
    for (let i = 0; i < bands; i++) {
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
  #look(at: number): void {
    const back = this.#back;
    const through = this.#through;
    let x = 0;
    let y = 0;
    let z = 0;
    for (let i = 0; i < bands; i++) {
      const r = back[i];
      const under = paper[i];
      const passed = through[i] ** 2;
      const seen = r + (passed * under) / Math.max(1 - r * under, 1e-12);
      x += seen * toX[i];
      y += seen * toY[i];
      z += seen * toZ[i];
      const twice = passed / Math.max(1 - r * r, 1e-12);
      back[i] = r + twice * r;
      through[i] = twice;
    }
    writeLabOfSums(x, y, z, surfaceFloor.dry, this.lab, at);
  }
}

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
    const share = parts[n] / sum;
    const [ownK, ownS] = spectra[n];
    for (let i = 0; i < bands; i++) {
      K[i] = K[i] + share * ownK[i];
      S[i] = S[i] + share * ownS[i];
    }
  }
}

/** The mixes of one group of paints. */
export function mixGroup(paints: readonly Paint[], members: readonly number[]): MixGroup {
  const ways = waysOf[members.length - 1];
  const chosen = members.map((member) => spectraOf(paints[member]));
  const lightness = new Int16Array(ways.length * loads);
  const chroma = new Int16Array(2 * lightness.length);
  let darkest = 100;
  for (const [way, parts] of ways.entries()) {
    mix(chosen, parts);
    ladder.write(K, S);
    for (let n = 0; n < loads; n++) {
      const at = way * loads + n;
      const l = ladder.lab[3 * n];
      lightness[at] = held(l);
      chroma[2 * at] = held(ladder.lab[3 * n + 1]);
      chroma[2 * at + 1] = held(ladder.lab[3 * n + 2]);
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

let kept: MixLibrary | undefined;
let groups = new Map<string, MixGroup>();

const sameBox = (one: readonly Paint[], two: readonly Paint[]): boolean =>
  one.length === two.length && one.every((paint, i) => paint === two[i]);

/**
 * The library of the last box asked for is kept: it is the dear part of a search and the same for every
 * picture. Another box takes over the mixes of the paints it has in common with it, and so does a
 * second search those of a first that is not yet through.
 */
export async function keptLibrary(
  paints: readonly Paint[],
  checkpoint: Checkpoint,
): Promise<MixLibrary> {
  if (kept && sameBox(kept.paints, paints)) return kept;
  const keyOf = (members: readonly number[]): string =>
    members.map((n) => `${paints[n]?.id} ${paints[n]?.revision}`).join();
  const built = await buildMixLibrary(paints, checkpoint, (members) => {
    const key = keyOf(members);
    const group = groups.get(key) ?? mixGroup(paints, members);
    groups.set(key, group);
    return { ...group, members };
  });
  // That of a few chosen paints is made in no time and must not push out the box's.
  if (paints.length > largestPalette || !kept) {
    kept = built;
    groups = new Map(built.groups.map((group) => [keyOf(group.members), group]));
  }
  return built;
}

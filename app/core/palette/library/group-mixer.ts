import {
  lightnessOfSum,
  spectrumSize,
  weightX,
  weightY,
  weightZ,
  writeLabOfSums,
} from '../../colour/spectrum.ts';
import { drySurface } from '../../colour/surface.ts';
import { mixSizes, searchShares } from '../../limits.ts';
import { defaultPaper } from '../../paint/colour-of-washes.ts';
import { wholeParts } from '../../paint/mix.ts';
import { MixSensitivity } from '../../paint/mix-sensitivity.ts';
import { coatOf, type Paint, strengthOf } from '../../paint/paint.ts';
import { fallOf } from '../../paint/seen-layer.ts';

// Read once: the loops below are the hottest of all, and some ways to load a file look imports up each time.
const paper = defaultPaper;
const samples = spectrumSize;
const loads = searchShares.length;
const { k2 } = drySurface;
const falling = fallOf;
const [toX, toY, toZ] = [weightX, weightY, weightZ];

/** Absorption that scattering, or a coat of none, is given at least: by ten digits less than anybody can see. */
const leastAbsorption = 1e-12;

/** Colours of one mix from its palest to a full coat, and the work space for it. */
class MixLadder {
  /** L*, a*, b* at the 15 shares of a full coat, dry, on the default paper. */
  readonly lab = new Float64Array(3 * searchShares.length);
  /** What falls with twice the depth of the layer, and by how much for each ml/m2. */
  readonly #fallen = new Float64Array(samples);
  readonly #depth = new Float64Array(samples);
  /** Light of a sample is (`#thick` + `#thin` x fallen) / (1 + `#turn` x fallen). */
  readonly #thick = new Float64Array(samples);
  readonly #thin = new Float64Array(samples);
  readonly #turn = new Float64Array(samples);

  /** K and S are per ml/m2, 36 samples; `coat` is ml/m2. Fills `lab`. */
  write(K: Float64Array, S: Float64Array, coat: number): void {
    this.#open(K, S, coat);
    for (const start of [0, 1]) {
      this.#lay(searchShares[start] * coat);
      for (let step = start; step < loads; step += 2) this.#look(3 * step);
    }
  }

  /** Least L* of the 15 shares of a full coat, as `write` gives it, in less time. */
  leastLightness(K: Float64Array, S: Float64Array, coat: number): number {
    this.#open(K, S, coat);
    let least = 100;
    for (const start of [0, 1]) {
      this.#lay(searchShares[start] * coat);
      for (let step = start; step < loads; step += 2) least = Math.min(least, this.#lightness());
    }
    return least;
  }

  /** L* of one layer, dry, on the default paper. */
  lightnessOf(K: Float64Array, S: Float64Array, load: number): number {
    this.#open(K, S, load);
    this.#lay(load);
    return this.#lightness();
  }

  /**
   * `writeSeenLayer` over the paper with the load left open: A, B, C of the layer (Kubelka 1948) are sums of what falls
   * with twice its depth and what does not, and what both its sides have in common goes out of the fraction.
   */
  #open(K: Float64Array, S: Float64Array, coat: number): void {
    const [depth, thick, thin, turn] = [this.#depth, this.#thick, this.#thin, this.#turn];
    for (let i = 0; i < samples; i++) {
      const s = S[i];
      const k = Math.max(K[i], leastAbsorption * (s + 1 / coat));
      const under = paper[i];
      const w = Math.sqrt(k * (k + 2 * s));
      const back = s - under * (k + s);
      const across = k + s - under * s;
      const through = under * w;
      const share = 1 / (across + w - k2 * (back + through));
      depth[i] = 2 * w;
      thick[i] = (1 - k2) * (through + back) * share;
      thin[i] = (1 - k2) * (through - back) * share;
      turn[i] = (w - across - k2 * (through - back)) * share;
    }
  }

  #lay(load: number): void {
    const [depth, fallen] = [this.#depth, this.#fallen];
    for (let i = 0; i < samples; i++) fallen[i] = falling(depth[i] * load);
  }

  // Then lays as much again, for the load after next: what falls, falls twice.
  #look(offset: number): void {
    const [thick, thin, turn, fallen] = [this.#thick, this.#thin, this.#turn, this.#fallen];
    let x = 0;
    let y = 0;
    let z = 0;
    for (let i = 0; i < samples; i++) {
      const fall = fallen[i];
      const light = (thick[i] + thin[i] * fall) / (1 + turn[i] * fall);
      fallen[i] = fall * fall;
      x += light * toX[i];
      y += light * toY[i];
      z += light * toZ[i];
    }
    writeLabOfSums(x, y, z, drySurface, this.lab, offset);
  }

  // As `#look`, lightness alone.
  #lightness(): number {
    const [thick, thin, turn, fallen] = [this.#thick, this.#thin, this.#turn, this.#fallen];
    let y = 0;
    for (let i = 0; i < samples; i++) {
      const fall = fallen[i];
      fallen[i] = fall * fall;
      y += ((thick[i] + thin[i] * fall) / (1 + turn[i] * fall)) * toY[i];
    }
    return lightnessOfSum(y, drySurface);
  }
}

/** K and S per ml/m2 of the paint, and its full coat, ml/m2. */
type TypedSpectra = readonly [K: Float64Array, S: Float64Array, coat: number];

/** All mixes of one group of one to three paints, as single washes on the default paper. */
export interface MixGroup {
  /** Indices into `MixLibrary.paints`, rising. */
  readonly members: readonly number[];
  /** Of every mix, parts (as `wholeParts` lists them) x shares of a full coat: L* x 256 ... */
  readonly lightness: Int16Array;
  /** ... and a*, b* x 256, held within -128..128. */
  readonly chroma: Int16Array;
  /** Of every mix, as `GroupMixer.sensitivityOf` says it: NaN until it was asked. */
  readonly sensitivity: Float32Array;
  /** Of its paints. */
  readonly spectra: readonly TypedSpectra[];
  /** L* of the darkest mix where it lies `coatsInDarks` thick. */
  readonly darkest: number;
}

/** Full coats in the darks: a wash as thick as it goes, over what earlier ones left of the same (own). */
const coatsInDarks = 1.5;

/** L*, a*, b* are kept as whole numbers of this part of a unit. */
export const labSteps = 256;

const held = (value: number): number =>
  Math.min(32767, Math.max(-32768, Math.round(value * labSteps)));

const waysOf = mixSizes.map(wholeParts);

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
    const spectra = members.map((member) => this.#spectra[member]);
    const lightness = new Int16Array(ways.length * loads);
    const chroma = new Int16Array(2 * lightness.length);
    const sensitivity = new Float32Array(ways.length).fill(Number.NaN);
    const { lab } = this.#ladder;
    let darkestWay = 0;
    let least = 100;
    for (const [way, parts] of ways.entries()) {
      this.#ladder.write(this.#K, this.#S, this.#add(spectra, parts));
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
    const darkest = this.#inDarks(spectra, ways[darkestWay]);
    return { members, lightness, chroma, sensitivity, spectra, darkest };
  }

  /** `darkest` of the mixes of one group, in a third of the time. */
  darkest(members: readonly number[]): number {
    const spectra = members.map((member) => this.#spectra[member]);
    let [darkestWay, least] = [waysOf[members.length - 1][0], 100];
    for (const parts of waysOf[members.length - 1]) {
      const coat = this.#add(spectra, parts);
      const l = this.#ladder.leastLightness(this.#K, this.#S, coat);
      if (l < least) [darkestWay, least] = [parts, l];
    }
    return this.#inDarks(spectra, darkestWay);
  }

  #inDarks(spectra: readonly TypedSpectra[], parts: readonly number[]): number {
    const coat = this.#add(spectra, parts);
    return this.#ladder.lightnessOf(this.#K, this.#S, coatsInDarks * coat);
  }

  /** `MixSensitivity` of one mix of a group of any mixer: few are ever asked for, so it is worked out then and kept. */
  sensitivityOf({ spectra, sensitivity }: MixGroup, way: number): number {
    if (Number.isNaN(sensitivity[way])) {
      const parts = waysOf[spectra.length - 1][way];
      const coat = this.#add(spectra, parts);
      sensitivity[way] = this.#sensitivity.of(this.#K, this.#S, coat, spectra, parts);
    }
    return sensitivity[way];
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

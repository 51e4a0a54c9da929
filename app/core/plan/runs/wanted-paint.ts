import { writeSeenDifference } from '../../colour/ciede2000.ts';
import type { Lab } from '../../colour/lab.ts';
import { spectrumSize } from '../../colour/spectrum.ts';
import { CoarseLayers } from '../../paint/coarse-layers.ts';
import type { MixSpectra } from '../../paint/layer.ts';
import { writeSeenLayer } from '../../paint/seen-layer.ts';
import { runningLightness, type Underneath } from './solve-square.ts';

/** Figures that say how a colour is missed: three of what is seen, and lightness once more. */
export const missedBy = 4;

/** Enough to come within what is seen (own). */
const mostRounds = 6;
const sweeps = 24;
/** Amounts that move by less, ml/m2, have come to rest. */
const settled = 1e-7;
const enough = 0.02;
/** Keeps amounts of paints that do the same from running off. */
const damping = 0.01;
/** ml/m2 of a paint at which it is asked what more of it does, at least. */
const little = 0.025;

/** Prices tried for paint where there would be too much of it. */
const dearest = 1e3;
const priceRounds = 7;

const sumOf = (list: Float64Array): number => list.reduce((all, each) => all + each, 0);

/**
 * Finds how much of every paint of a palette would give a colour over what lies there, if any number of them could be mingled
 * there: amounts of at least 0, together at most `most` ml/m2, and how the colour moves with each. Gauss-Newton on the
 * visible difference, the amounts held above 0 by coordinate descent. One work space for all squares of a plan.
 */
export class WantedPaint {
  readonly #paints: readonly Pick<MixSpectra, 'K' | 'S'>[];
  readonly #kx = new Float64Array(spectrumSize);
  readonly #sx = new Float64Array(spectrumSize);
  readonly #lab = new Float64Array(3);
  readonly #missed = new Float64Array(missedBy);
  readonly #next = new Float64Array(missedBy);
  readonly #left = new Float64Array(missedBy);
  readonly #seen = new Float64Array(9);
  readonly #trial: Float64Array;
  readonly #layers: CoarseLayers;
  /** ml/m2 of every paint. */
  readonly amounts: Float64Array;
  /** What all paint should do to the figures, from none on: what the amounts do, and what they still miss. */
  readonly wanted = new Float64Array(missedBy);
  /** What one ml/m2 of every paint does to the figures: paints x 4. */
  readonly slopes: Float64Array;

  constructor(paints: readonly Pick<MixSpectra, 'K' | 'S'>[]) {
    this.#paints = paints;
    this.#layers = new CoarseLayers(paints);
    this.amounts = new Float64Array(paints.length);
    this.#trial = new Float64Array(paints.length);
    this.slopes = new Float64Array(paints.length * missedBy);
  }

  #judge(
    amounts: Float64Array,
    { reflectance }: Underneath,
    target: Lab,
    seen: Float64Array,
    out: Float64Array,
  ): number {
    const kx = this.#kx.fill(0);
    const sx = this.#sx.fill(0);
    for (let p = 0; p < amounts.length; p++) {
      const { K, S } = this.#paints[p];
      const amount = amounts[p];
      for (let i = 0; i < spectrumSize; i++) {
        kx[i] = kx[i] + amount * K[i];
        sx[i] = sx[i] + amount * S[i];
      }
    }
    const lab = this.#lab;
    writeSeenLayer(kx, sx, reflectance, lab);
    const dl = lab[0] - target[0];
    const da = lab[1] - target[1];
    const db = lab[2] - target[2];
    let cost = 0;
    for (let r = 0; r < missedBy; r++) {
      out[r] =
        r < 3
          ? seen[3 * r] * dl + seen[3 * r + 1] * da + seen[3 * r + 2] * db
          : runningLightness * dl;
      cost += out[r] * out[r];
    }
    return cost;
  }

  /** Fills `amounts`, `slopes` and `wanted`. */
  solve(underneath: Underneath, target: Lab, most: number): void {
    this.#find(underneath, target, most);
    const { amounts, slopes, wanted } = this;
    for (let r = 0; r < missedBy; r++) {
      wanted[r] = -this.#missed[r];
      for (let p = 0; p < amounts.length; p++) wanted[r] += amounts[p] * slopes[p * missedBy + r];
    }
  }

  #find(underneath: Underneath, target: Lab, most: number): void {
    const { amounts } = this;
    const trial = this.#trial;
    const seen = this.#seen;
    writeSeenDifference(target, seen);
    this.#layers.ground = underneath.reflectance;
    amounts.fill(Math.min(0.3, most / (2 * amounts.length)));
    let cost = this.#judge(amounts, underneath, target, seen, this.#missed);
    for (let round = 0; ; round++) {
      this.#writeSlopes(seen);
      if (round === mostRounds) return;
      this.#step(trial, most);
      let next = this.#judge(trial, underneath, target, seen, this.#next);
      for (let halved = 0; next > cost && halved < 3; halved++) {
        for (let p = 0; p < trial.length; p++) trial[p] = (trial[p] + amounts[p]) / 2;
        next = this.#judge(trial, underneath, target, seen, this.#next);
      }
      if (next >= cost) return;
      const gain = cost - next;
      amounts.set(trial);
      this.#missed.set(this.#next);
      cost = next;
      if (gain < enough * cost + 1e-3) {
        this.#writeSlopes(seen);
        return;
      }
    }
  }

  /** By half the samples; a paint that is not there as if there were a little of it. */
  #writeSlopes(seen: Float64Array): void {
    const { amounts, slopes } = this;
    const layers = this.#layers;
    for (let p = 0; p < amounts.length; p++) this.#trial[p] = Math.max(amounts[p], little);
    layers.look(this.#trial);
    for (let p = 0; p < amounts.length; p++) {
      const dl = layers.slopes[3 * p];
      const da = layers.slopes[3 * p + 1];
      const db = layers.slopes[3 * p + 2];
      for (let r = 0; r < 3; r++) {
        slopes[p * missedBy + r] = seen[3 * r] * dl + seen[3 * r + 1] * da + seen[3 * r + 2] * db;
      }
      slopes[p * missedBy + 3] = runningLightness * dl;
    }
  }

  /** The amounts that the slopes promise to be best, together at most `most`, into `out`. */
  #step(out: Float64Array, most: number): void {
    this.#descend(out, 0);
    if (sumOf(out) <= most) return;
    let low = 0;
    let high = 1;
    for (; high < dearest; high *= 4) {
      this.#descend(out, high);
      if (sumOf(out) <= most) break;
    }
    for (let round = 0; round < priceRounds; round++) {
      const price = (low + high) / 2;
      this.#descend(out, price);
      if (sumOf(out) > most) low = price;
      else high = price;
    }
    this.#descend(out, high);
    const over = sumOf(out) / most;
    if (over > 1) for (let p = 0; p < out.length; p++) out[p] /= over;
  }

  /** The best amounts where every ml/m2 costs so much: coordinate descent from those there are. */
  #descend(out: Float64Array, price: number): void {
    const { amounts, slopes } = this;
    const left = this.#left;
    left.set(this.#missed);
    out.set(amounts);
    for (let sweep = 0, moved = 1; sweep < sweeps && moved > settled; sweep++) {
      moved = 0;
      for (let p = 0; p < out.length; p++) {
        let gain = damping * (amounts[p] - out[p]) - price;
        let square = damping;
        for (let r = 0; r < missedBy; r++) {
          const slope = slopes[p * missedBy + r];
          gain -= slope * left[r];
          square += slope * slope;
        }
        const by = Math.max(-out[p], gain / square);
        out[p] += by;
        moved = Math.max(moved, Math.abs(by));
        for (let r = 0; r < missedBy; r++) left[r] += by * slopes[p * missedBy + r];
      }
    }
  }
}

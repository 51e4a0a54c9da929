import { writeLabOfCurve } from '../colour/lab.ts';
import { cieCurve, slopeOfCieCurveAt } from '../colour/lightness.ts';
import { type Spectrum, spectrumSize, weightX, weightY, weightZ } from '../colour/spectrum.ts';
import { addGlance, drySurface } from '../colour/surface.ts';
import type { PaintSpectra } from './layer.ts';
import { fallOf } from './seen-layer.ts';

/** Samples of a coarse spectrum: one for two neighbours. */
const coarseSize = spectrumSize / 2;

const inPairs = (weights: Float64Array): Float64Array =>
  Float64Array.from({ length: coarseSize }, (_, j) => weights[2 * j] + weights[2 * j + 1]);

const seen = weightX.map((x, i) => x + weightY[i] + weightZ[i]);
const seenInPairs = inPairs(seen);

/** Writes the mean of every two neighbours, as much as each is seen, to `out`. */
function writeCoarse(spectrum: Spectrum, out: Float64Array): Float64Array {
  for (let j = 0; j < coarseSize; j++) {
    const first = seen[2 * j] * spectrum[2 * j];
    out[j] = (first + seen[2 * j + 1] * spectrum[2 * j + 1]) / seenInPairs[j];
  }
  return out;
}

/** Every layer absorbs so much at least, so that nothing is divided by 0: some 1e-5 L*. */
const leastAbsorbed = 1e-6;

// Read once, for a hot loop.
const [x18, y18, z18] = [weightX, weightY, weightZ].map(inPairs);
const { k1, k2 } = drySurface;
const fall = fallOf;
const curve = cieCurve;

/**
 * What some paints mingled in a layer look like over a ground, and how that moves with each of them, at half the
 * samples: for solvers that ask many times. Colours are off by 0.2 CIEDE2000 (at most 1.4, random mixes of the
 * built-in paints over washes), but their differences, where amounts change by a fifth, by 0.02 (at most 0.2): begin
 * with the colour of `writeSeenLayer`, and take from here how it changes.
 */
export class CoarseLayers {
  readonly #count: number;
  /** Paints x 18. */
  readonly #K: Float64Array;
  readonly #S: Float64Array;
  readonly #ground = new Float64Array(coarseSize);
  readonly #alongK = new Float64Array(coarseSize);
  readonly #alongS = new Float64Array(coarseSize);
  /** Light that comes out, as X, Y, Z. */
  readonly #light = new Float64Array(3);
  /** L*, a*, b* looked at last. */
  readonly lab = new Float64Array(3);
  /** What one ml/m2 of every paint does to it: paints x 3. */
  readonly slopes: Float64Array;

  constructor(paints: readonly PaintSpectra[]) {
    this.#count = paints.length;
    this.slopes = new Float64Array(3 * paints.length);
    this.#K = new Float64Array(paints.length * coarseSize);
    this.#S = new Float64Array(paints.length * coarseSize);
    for (const [p, { K, S }] of paints.entries()) {
      writeCoarse(K, this.#K.subarray(p * coarseSize));
      writeCoarse(S, this.#S.subarray(p * coarseSize));
    }
  }

  /** What lies under them from now on: 36 samples, inside the surface. */
  set ground(ground: Spectrum) {
    writeCoarse(ground, this.#ground);
  }

  /**
   * Fills `lab` and `slopes` for so much of every paint, ml/m2.
   *
   * Kubelka (1948), J. Opt. Soc. Am. 38, 448-457, as in `writeLayerSlopes`, multiplied by 2 exp(-w) sinh w so that
   * only falling exponentials are left: R = P / Q, of which (1 - k2) P / (Q - k2 P) comes out of the surface.
   */
  look(amounts: Float64Array): void {
    this.#addLight(amounts);
    this.#turnToLab();
  }

  // Two loops, each by itself: in one function the engine would call what it calls, and make a number of every answer.
  #addLight(amounts: Float64Array): void {
    const K = this.#K;
    const S = this.#S;
    const ground = this.#ground;
    const alongK = this.#alongK;
    const alongS = this.#alongS;
    const toX = x18;
    const toY = y18;
    const toZ = z18;
    const count = this.#count;
    let x = 0;
    let y = 0;
    let z = 0;
    for (let j = 0; j < coarseSize; j++) {
      let k = 0 + leastAbsorbed; // a sum, or the engine takes it for anything and makes numbers on the heap
      let s = 0;
      for (let p = 0, i = j; p < count; p++, i += coarseSize) {
        k += amounts[p] * K[i];
        s += amounts[p] * S[i];
      }
      const g = ground[j];
      const q = k + s;
      const w = Math.sqrt(k * (q + s));
      const once = fall(w);
      const twice = once * once;
      const u = 1 - twice;
      const v = 1 + twice;
      const P = s * u + g * (w * v - q * u);
      const Q = w * v + (q - g * s) * u;
      const left = Q - k2 * P;
      const divided = 1 / (left * w);
      const out = (1 - k2) * divided * w;
      const light = P * out;
      x += light * toX[j];
      y += light * toY[j];
      z += light * toZ[j];
      // Along w; then along K and S, which move w by q / w and k / w.
      const bend = v - 2 * twice * w;
      const Pw = 2 * twice * s + g * (bend - 2 * twice * q);
      const Qw = bend + 2 * twice * (q - g * s);
      const both = out * divided * w;
      const alongW = out * divided * (Pw * Q - P * Qw);
      alongK[j] = alongW * q - both * u * (g * Q + P);
      alongS[j] = alongW * k + both * u * (1 - g) * (Q - P);
    }
    this.#light[0] = x;
    this.#light[1] = y;
    this.#light[2] = z;
  }

  #turnToLab(): void {
    const K = this.#K;
    const S = this.#S;
    const alongK = this.#alongK;
    const alongS = this.#alongS;
    const toX = x18;
    const toY = y18;
    const toZ = z18;
    const light = this.#light;
    const curveX = curve(addGlance(light[0], k1));
    const curveY = curve(addGlance(light[1], k1));
    const curveZ = curve(addGlance(light[2], k1));
    writeLabOfCurve(curveX, curveY, curveZ, this.lab, 0);
    const fx = (1 - k1) * slopeOfCieCurveAt(curveX);
    const fy = (1 - k1) * slopeOfCieCurveAt(curveY);
    const fz = (1 - k1) * slopeOfCieCurveAt(curveZ);
    const { slopes } = this;
    for (let p = 0; p < this.#count; p++) {
      const start = p * coarseSize;
      let dx = 0;
      let dy = 0;
      let dz = 0;
      for (let j = 0; j < coarseSize; j++) {
        const along = alongK[j] * K[start + j] + alongS[j] * S[start + j];
        dx += along * toX[j];
        dy += along * toY[j];
        dz += along * toZ[j];
      }
      slopes[3 * p] = 116 * fy * dy;
      slopes[3 * p + 1] = 500 * (fx * dx - fy * dy);
      slopes[3 * p + 2] = 200 * (fy * dy - fz * dz);
    }
  }
}

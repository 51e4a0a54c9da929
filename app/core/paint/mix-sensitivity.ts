import { differenceOf } from '../colour/ciede2000.ts';
import {
  type Spectrum,
  spectrumSize,
  weightX,
  weightY,
  weightZ,
  writeLabOfSums,
} from '../colour/spectrum.ts';
import { drySurface, escaping } from '../colour/surface.ts';
import { defaultPaper } from './colour-of-washes.ts';
import { writeLayerSlopes } from './layer-slopes.ts';

/** By so much her tube is stronger or weaker than the table's, as a share: one deviation (own). */
export const strengthOff = 0.15;

/** Share of a full coat at which mixes are looked at: a middle tone for most (own). */
const sharesLookedAt = 1 / 8;

/** L* by which e times the paint darkens, at least: below, a mix is no unsteadier for being pale (own). */
const leastSlope = 4;

/** K and S per ml/m2, 36 samples each. */
type SpectraPair = readonly [K: Spectrum, S: Spectrum, ...rest: readonly unknown[]];

// Read once, for the loops of the library of mixes.
const paper = defaultPaper;
const samples = spectrumSize;
const slopesOf = writeLayerSlopes;
const writeLab = writeLabOfSums;
const lightOf = escaping;
const { k2 } = drySurface;
const [toX, toY, toZ] = [weightX, weightY, weightZ];

/**
 * How unsteady the colours of mixes are. Greys of complementaries turn to one side or the other with the strength of
 * either paint; near neighbours, or one paint alone, only grow lighter or darker. One work space for all mixes.
 */
export class MixSensitivity {
  readonly #slopes = new Float64Array(3);
  readonly #lab = new Float64Array(3);
  /** Of every sample: how light grows with a paint's strength, and reflectance with K and S. */
  readonly #more = new Float64Array(samples);
  readonly #alongK = new Float64Array(samples);
  readonly #alongS = new Float64Array(samples);

  /**
   * The difference to be expected (CIEDE2000, root of the sum of squares) where each paint's strength is off by
   * `strengthOff`, for each L* by which e times the paint darkens there. Times that slope it is the difference at any
   * strength and over any ground: within a fifth for most. From slopes of the layer (Kubelka 1948). `K`, `S`, `coat`
   * (ml/m2) are the mix's, `paints` its one to three paints.
   */
  of(
    K: Spectrum,
    S: Spectrum,
    coat: number,
    paints: readonly SpectraPair[],
    parts: readonly number[],
  ): number {
    const load = sharesLookedAt * coat;
    const whole = parts.reduce((all, part) => all + part, 0);
    const [slopes, lab] = [this.#slopes, this.#lab];
    const [moreOf, alongKs, alongSs] = [this.#more, this.#alongK, this.#alongS];
    let [x, y, z] = [0, 0, 0];
    for (let i = 0; i < samples; i++) {
      slopesOf(K[i] * load, S[i] * load, paper[i], slopes, 0);
      const r = slopes[0];
      const light = lightOf(r, k2);
      x += light * toX[i];
      y += light * toY[i];
      z += light * toZ[i];
      moreOf[i] = (strengthOff * load * (1 - k2)) / (whole * (1 - k2 * r) * (1 - k2 * r));
      alongKs[i] = slopes[1];
      alongSs[i] = slopes[2];
    }
    writeLab(x, y, z, drySurface, lab, 0);
    const [l, a, b] = [lab[0], lab[1], lab[2]];
    let squares = 0;
    let slope = 0;
    for (let n = 0; n < paints.length; n++) {
      const [ownK, ownS] = paints[n];
      let [moveX, moveY, moveZ] = [0, 0, 0];
      for (let i = 0; i < samples; i++) {
        const move = moreOf[i] * parts[n] * (alongKs[i] * ownK[i] + alongSs[i] * ownS[i]);
        moveX += move * toX[i];
        moveY += move * toY[i];
        moveZ += move * toZ[i];
      }
      writeLab(x + moveX, y + moveY, z + moveZ, drySurface, lab, 0);
      squares += differenceOf(l, a, b, lab[0], lab[1], lab[2]) ** 2;
      slope += (l - lab[0]) / strengthOff;
    }
    return Math.sqrt(squares) / Math.max(leastSlope, slope);
  }
}

// How common every colour is on one side of the line: a histogram of L*, a*, b*, blurred, so that
// colours near to seen ones count too (kernel density estimate; Rosenblatt 1956, Parzen 1962).
import { type ColourBytes, codesPerLightness } from './subject-planes.ts';

/** Side of a bin; blurred, it forgives about as much again. Own figures, tried on made pictures. */
const lightnessBin = 4;
const colourBin = 5;
const lightnessBins = Math.ceil(100 / lightnessBin) + 1;
const colourBins = Math.ceil(256 / colourBin);
const strides = [colourBins * colourBins, colourBins, 1] as const;
const lengths = [lightnessBins, colourBins, colourBins] as const;
const bins = strides[0] * lightnessBins;

const lightnessStart = Int32Array.from(
  { length: 256 },
  (_, code) => Math.floor(code / codesPerLightness / lightnessBin) * strides[0],
);

/** The bin of the colour at one place. */
export const colourBinAt = ({ lightness, a, b }: ColourBytes, i: number): number =>
  (lightnessStart[lightness[i] as number] as number) +
  Math.floor(((a[i] as number) + 128) / colourBin) * strides[1] +
  Math.floor(((b[i] as number) + 128) / colourBin);

/** Weights 1 2 1 along one axis, in place; what would leave the colour space stays at its border. */
function blurAxis(counts: Float32Array, axis: 0 | 1 | 2): void {
  const stride = strides[axis];
  const length = lengths[axis];
  for (let block = 0; block < bins; block += stride * length) {
    for (let start = block; start < block + stride; start++) {
      let before = counts[start] as number;
      let own = before;
      for (let n = 1, at = start; n <= length; n++, at += stride) {
        const after = n < length ? (counts[at + stride] as number) : own;
        counts[at] = 0.25 * before + 0.5 * own + 0.25 * after;
        before = own;
        own = after;
      }
    }
  }
}

/** Density of colours, its sum 1, from weighted samples. */
export class ColourModel {
  readonly #density = new Float32Array(bins);
  #total = 0;

  add(bin: number, weight: number): void {
    this.#density[bin] = (this.#density[bin] as number) + weight;
    this.#total += weight;
  }

  /** By bin; to be asked once, after all samples. */
  finished(): Float32Array {
    const density = this.#density;
    for (let n = 0; n < 2; n++) for (const axis of [0, 1, 2] as const) blurAxis(density, axis);
    const scale = this.#total > 0 ? 1 / this.#total : 0;
    for (let i = 0; i < bins; i++) density[i] = (density[i] as number) * scale;
    return density;
  }
}

/** A colour seen on neither side tells nothing: as if each had this much of it. */
const unseen = 1e-5;
const mostFavour = 4;

/** For every bin the natural logarithm of subject's over ground's density, within +-4. */
export function favourOf(subject: Float32Array, ground: Float32Array): Float32Array {
  const favour = new Float32Array(bins);
  for (let i = 0; i < bins; i++) {
    const [one, other] = [subject[i] as number, ground[i] as number];
    if (one === 0 && other === 0) continue;
    const ratio = Math.log((one + unseen) / (other + unseen));
    favour[i] = Math.max(-mostFavour, Math.min(mostFavour, ratio));
  }
  return favour;
}

import type { LabPlanes } from '../../raster/linear-raster.ts';
import type { PixelSize } from '../../raster/size.ts';

/** Colours of a picture or a grid, a byte a value: L* x 2.55, a* and b* (-128..127). */
export interface ColourBytes {
  readonly size: PixelSize;
  readonly lightness: Uint8ClampedArray;
  readonly a: Int8Array;
  readonly b: Int8Array;
}

/**
 * What the subject's line is looked for in, so small that it can stay in memory between strokes:
 * simplified colours, and the unsimplified L* x 2.55.
 */
export interface SubjectPlanes extends ColourBytes {
  readonly plain: Uint8ClampedArray;
}

/** Codes of one unit of L*. */
export const codesPerLightness = 2.55;

const bytes = (plane: Float32Array): Uint8ClampedArray => {
  const out = new Uint8ClampedArray(plane.length); // rounds and clamps by itself
  for (let i = 0; i < plane.length; i++) out[i] = plane[i] * codesPerLightness;
  return out;
};

const signed = (plane: Float32Array): Int8Array => {
  const out = new Int8Array(plane.length);
  for (let i = 0; i < plane.length; i++) {
    out[i] = Math.max(-128, Math.min(127, Math.round(plane[i])));
  }
  return out;
};

/** From the simplified planes and the unsimplified lightness; both are left alone. */
export function subjectPlanes(
  { lightness, a, b }: LabPlanes,
  plain: Float32Array,
  size: PixelSize,
): SubjectPlanes {
  return { size, lightness: bytes(lightness), a: signed(a), b: signed(b), plain: bytes(plain) };
}

/** Mean colours of square cells. */
export interface ColourGrid extends ColourBytes {
  /** Side of a cell in px of the raster. */
  readonly cellPx: number;
}

/** Cells so large that the grid's long side is at most `longSide`. */
export function colourGrid(planes: ColourBytes, longSide: number): ColourGrid {
  const { width, height } = planes.size;
  const cellPx = Math.max(1, Math.ceil(Math.max(width, height) / longSide));
  const size = { width: Math.ceil(width / cellPx), height: Math.ceil(height / cellPx) };
  const cells = size.width * size.height;
  const lightness = new Uint8ClampedArray(cells);
  const a = new Int8Array(cells);
  const b = new Int8Array(cells);
  for (let cell = 0; cell < cells; cell++) {
    const left = (cell % size.width) * cellPx;
    const top = Math.floor(cell / size.width) * cellPx;
    const right = Math.min(width, left + cellPx);
    const bottom = Math.min(height, top + cellPx);
    let [l, u, v] = [0, 0, 0];
    for (let y = top; y < bottom; y++) {
      for (let i = y * width + left; i < y * width + right; i++) {
        l += planes.lightness[i];
        u += planes.a[i];
        v += planes.b[i];
      }
    }
    const count = (right - left) * (bottom - top);
    lightness[cell] = l / count;
    a[cell] = Math.round(u / count);
    b[cell] = Math.round(v / count);
  }
  return { size, lightness, a, b, cellPx };
}

// How common every colour is on one side of the line: a histogram of L*, a*, b*, blurred, so that
// colours near to seen ones count too (kernel density estimate; Rosenblatt 1956, Parzen 1962).
/** Side of a bin; blurred, it forgives about as much again (own, tried on made pictures). */
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
  lightnessStart[lightness[i]] +
  Math.floor((a[i] + 128) / colourBin) * strides[1] +
  Math.floor((b[i] + 128) / colourBin);

/** Weights 1 2 1 along one axis, in place; what would leave the colour space stays at its border. */
function blurAxis(counts: Float32Array, axis: 0 | 1 | 2): void {
  const stride = strides[axis];
  const length = lengths[axis];
  for (let block = 0; block < bins; block += stride * length) {
    for (let start = block; start < block + stride; start++) {
      let before = counts[start];
      let own = before;
      for (let n = 1, bin = start; n <= length; n++, bin += stride) {
        const after = n < length ? counts[bin + stride] : own;
        counts[bin] = 0.25 * before + 0.5 * own + 0.25 * after;
        before = own;
        own = after;
      }
    }
  }
}

/** Density of colours, its sum 1, from weighted samples. */
class ColourModel {
  readonly #density = new Float32Array(bins);
  #total = 0;

  add(bin: number, weight: number): void {
    this.#density[bin] = this.#density[bin] + weight;
    this.#total += weight;
  }

  /** By bin; to be asked once, after all samples. */
  finished(): Float32Array {
    const density = this.#density;
    for (let n = 0; n < 2; n++) for (const axis of [0, 1, 2] as const) blurAxis(density, axis);
    const scale = this.#total > 0 ? 1 / this.#total : 0;
    for (let i = 0; i < bins; i++) density[i] = density[i] * scale;
    return density;
  }
}

/** A colour seen on neither side tells nothing: as if each had this much of it. */
const unseen = 1e-5;
const mostFavour = 4;

/** For every bin the natural logarithm of subject's over ground's density, within +-4. */
function favourOf(subject: Float32Array, ground: Float32Array): Float32Array {
  const favour = new Float32Array(bins);
  for (let i = 0; i < bins; i++) {
    const [one, other] = [subject[i], ground[i]];
    if (one === 0 && other === 0) continue;
    const ratio = Math.log((one + unseen) / (other + unseen));
    favour[i] = Math.max(-mostFavour, Math.min(mostFavour, ratio));
  }
  return favour;
}

/** What each colour bin speaks for, from the cells as they are sorted now (1 subject), by weight. */
export function learnedFavour(
  bins: Int32Array,
  sides: Uint8Array,
  weights: Float32Array,
): Float32Array {
  const subject = new ColourModel();
  const ground = new ColourModel();
  for (let i = 0; i < bins.length; i++) {
    (sides[i] === 1 ? subject : ground).add(bins[i], weights[i]);
  }
  return favourOf(subject.finished(), ground.finished());
}

// Edge-preserving smoothing along rows and columns in turn, with weights that fall off with the way
// walked plus the differences crossed. Source: Gastal, Oliveira, 'Domain Transform for Edge-Aware
// Image and Video Processing', 2011 (recursive filter, three iterations). Ours differs in one point:
// both directions start from the same input and share their weights out, instead of one running
// over the other's result. The kernel is the same, but mirrored in gives mirrored out.

import { gaussianBlur } from './gaussian-blur.ts';
import { type LabPlanes, type LinearRaster, labInPlace } from './linear-raster.ts';
import type { PixelSize } from './size.ts';
import { stripRows, turnStrip } from './turn-rows.ts';

export const iterations = 3;

export interface Smoothing {
  /** How far it smooths where nothing stands in the way, px. */
  readonly spacePx: number;
  /** A difference this large, in the planes' unit, counts as one `spacePx` of way. */
  readonly tone: number;
}

/** ln of the weight one px of way leaves in the first iteration. */
function firstFall(spacePx: number): number {
  const sigma = (spacePx * Math.sqrt(3) * 2 ** (iterations - 1)) / Math.sqrt(4 ** iterations - 1);
  return -Math.SQRT2 / sigma;
}

/** Less than this is nothing; floats near the end of their range are slow. */
const nothing = 1e-6;

/** Entries of the table of weights. */
export const entries = 4096;

/**
 * Weight by difference crossed, up to where it is nothing; straight lines between entries are within
 * 2e-6 of the exponential (h^2 / 8 times its second derivative, with h = ln(nothing) / 4096).
 */
function weightTable(fall: number): Float64Array {
  const least = Math.log(nothing);
  return Float64Array.from({ length: entries + 2 }, (_, i) =>
    i >= entries ? 0 : Math.exp(fall + (least * i) / entries),
  );
}

/** The weight left after a step, by the difference crossed. */
interface WeightByDifference {
  readonly table: Float64Array;
  /** Entries of the table a unit. */
  readonly perDifference: number;
}

export function weightByDifference({ spacePx, tone }: Smoothing): WeightByDifference {
  const fall = firstFall(spacePx);
  const perDifference = (entries * fall * (spacePx / tone)) / Math.log(nothing);
  return { table: weightTable(fall), perDifference };
}

/** The weight left after the step from one pixel to another. */
interface StepWeights extends WeightByDifference {
  readonly guides: readonly [Float32Array, Float32Array, Float32Array];
  readonly count: 1 | 2 | 3;
}

function stepWeights(guides: readonly Float32Array[], smoothing: Smoothing): StepWeights {
  const [one, two = one, three = two] = guides;
  if (!one || !two || !three) throw new RangeError('Smoothing follows at least one plane');
  const count = three !== two ? 3 : two !== one ? 2 : 1;
  return { guides: [one, two, three], count, ...weightByDifference(smoothing) };
}

/** Writes the weights of `count` steps, to the pixels from `start` on from those `back` before them. */
function weighSteps(
  { guides: [one, two, three], count: planes, table, perDifference }: StepWeights,
  start: number,
  back: number,
  count: number,
  out: Float32Array,
  to: number,
): void {
  for (let n = 0, i = start; n < count; n++, i++) {
    const j = i - back;
    let difference = Math.abs(one[i] - one[j]);
    if (planes > 1) difference += Math.abs(two[i] - two[j]);
    if (planes > 2) difference += Math.abs(three[i] - three[j]);
    const place = difference * perDifference;
    const entry = place | 0;
    const low = table[entry];
    out[to + n] = place < entries ? low + (place - entry) * (table[entry + 1] - low) : 0;
  }
}

/** By pixel, the weight left after the step from the one left of it; 0 at the border. */
function keptAcross(steps: StepWeights, { width, height }: PixelSize): Float32Array {
  const kept = new Float32Array(width * height);
  for (let at = 0; at < kept.length; at += width) {
    weighSteps(steps, at + 1, 1, width - 1, kept, at + 1);
  }
  return kept;
}

/** The same from the pixel above it, turned: columns are rows. */
function keptDown(steps: StepWeights, { width, height }: PixelSize): Float32Array {
  const kept = new Float32Array(width * height);
  const strip = new Float32Array(stripRows * width);
  for (let top = 0; top < height; top += stripRows) {
    const rows = Math.min(stripRows, height - top);
    for (let row = top === 0 ? 1 : 0; row < rows; row++) {
      weighSteps(steps, (top + row) * width, width, width, strip, row * width);
    }
    turnStrip(strip, rows, width, kept, height, top);
  }
  return kept;
}

/** Half the spread is the square of every weight: what the next iteration takes. */
function narrow(kept: Float32Array): void {
  for (let i = 0; i < kept.length; i++) kept[i] *= kept[i];
}

/**
 * Smooths the lines of a plane that begin at `start` and at `other`, which do not wait for each other's sums, and
 * writes them one after the other to `strip` from `to` on. `work` has room for four numbers a pixel: of either line
 * what comes from before, pixel included, and the weight of it.
 */
function smoothLines(
  plane: Float32Array,
  kept: Float32Array,
  start: number,
  other: number,
  count: number,
  work: Float64Array,
  strip: Float32Array,
  to: number,
): void {
  let [sum, weight, otherSum, otherWeight] = [0, 0, 0, 0];
  for (let i = 0, at = 0; i < count; i++, at += 4) {
    const k = kept[start + i];
    const l = kept[other + i];
    sum = k * sum + plane[start + i];
    weight = k * weight + 1;
    otherSum = l * otherSum + plane[other + i];
    otherWeight = l * otherWeight + 1;
    work[at] = sum;
    work[at + 1] = weight;
    work[at + 2] = otherSum;
    work[at + 3] = otherWeight;
  }
  sum = weight = otherSum = otherWeight = 0;
  for (let i = count - 1, at = 4 * i; i >= 0; i--, at -= 4) {
    const k = kept[start + i];
    const l = kept[other + i];
    strip[to + i] = (work[at] + sum) / (work[at + 1] + weight);
    strip[to + count + i] = (work[at + 2] + otherSum) / (work[at + 3] + otherWeight);
    sum = k * (sum + plane[start + i]);
    weight = k * (weight + 1);
    otherSum = l * (otherSum + plane[other + i]);
    otherWeight = l * (otherWeight + 1);
  }
}

/** Smooths the rows of `from` and writes them as columns of `to`. */
function smoothTurned(
  from: Float32Array,
  kept: Float32Array,
  { width, height }: PixelSize,
  to: Float32Array,
): void {
  const work = new Float64Array(4 * width);
  const strip = new Float32Array(stripRows * width);
  for (let top = 0; top < height; top += stripRows) {
    const rows = Math.min(stripRows, height - top);
    for (let row = 0; row < rows; row += 2) {
      const start = (top + row) * width;
      const other = row + 1 < rows ? start + width : start;
      smoothLines(from, kept, start, other, width, work, strip, row * width);
    }
    turnStrip(strip, rows, width, to, height, top);
  }
}

/**
 * Smooths `planes` in place, not across differences in the `guides` (up to three planes, summed; they
 * may be the planes themselves: differences are taken before anything is changed). Hands back
 * control after every pass over a plane. Three planes of that size are held meanwhile.
 */
export function* edgePreserving(
  planes: readonly Float32Array[],
  guides: readonly Float32Array[],
  size: PixelSize,
  smoothing: Smoothing,
): Generator<void> {
  const steps = stepWeights(guides, smoothing);
  const across = keptAcross(steps, size);
  yield;
  const down = keptDown(steps, size);
  yield;
  const turnedSize = { width: size.height, height: size.width };
  const turned = new Float32Array(size.width * size.height);
  for (let i = 0; i < iterations; i++) {
    if (i > 0) narrow(across);
    if (i > 0) narrow(down);
    for (const plane of planes) {
      smoothTurned(plane, across, size, turned);
      yield;
      smoothTurned(turned, down, turnedSize, plane);
      yield;
    }
  }
}

/** First a blur this wide on the sheet, mm: what squinting does to the finest grain. */
const blurMm = 0.5;
/** Then smoothing at brush scale, mm. */
const brushMm = 2;
/** A step of this many L* stands in the way like `brushMm` of paper. Set by eye on photographs. */
const lightnessStep = 8;
/** The same for lightness, a* and b* together. */
const colourStep = 12;

/** How wide the first blur is, sigma in px, and how colour and lightness are smoothed then. */
export function simplifyingFor(pxPerMm: number) {
  const spacePx = Math.max(1, brushMm * pxPerMm);
  return {
    blurPx: Math.max(1, blurMm * pxPerMm),
    colour: { spacePx, tone: colourStep },
    lightness: { spacePx, tone: lightnessStep },
  };
}

/** Whatever simplifies a raster as `simplify` does, to the last bit. */
export type Simplify = (raster: LinearRaster, pxPerMm: number) => Generator<void, LabPlanes>;

/**
 * The simplified planes L*, a*, b* of a raster; the raster is left alone. Lightness is smoothed by
 * its own differences only, so that other hues at equal lightness give the very same values.
 */
export function* simplify(raster: LinearRaster, pxPerMm: number): Generator<void, LabPlanes> {
  const size: PixelSize = { width: raster.width, height: raster.height };
  const copy: LinearRaster = {
    ...size,
    red: raster.red.slice(),
    green: raster.green.slice(),
    blue: raster.blue.slice(),
  };
  const by = simplifyingFor(pxPerMm);
  yield* gaussianBlur([copy.red, copy.green, copy.blue], size, by.blurPx);
  const planes = labInPlace(copy);
  yield;
  const { lightness, a, b } = planes;
  yield* edgePreserving([a, b], [lightness, a, b], size, by.colour);
  yield* edgePreserving([lightness], [lightness], size, by.lightness);
  return planes;
}

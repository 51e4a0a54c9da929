// Edge-preserving smoothing along rows and columns in turn, with weights that fall off with the way
// walked plus the differences crossed. Source: Gastal, Oliveira, 'Domain Transform for Edge-Aware
// Image and Video Processing', 2011 (recursive filter, three iterations). Ours differs in one point:
// both directions start from the same input and share their weights out, instead of one running
// over the other's result. The kernel is the same, but mirrored in gives mirrored out.

import { gaussianBlur } from './gaussian-blur.ts';
import { type LabPlanes, type LinearRaster, labInPlace } from './linear-raster.ts';
import type { PixelSize } from './size.ts';

const iterations = 3;
/** Columns taken at a time going down: one cache line of floats. */
const block = 16;

interface Smoothing {
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
const entries = 4096;

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

/** kept[i]: weight left after the step from the pixel left of or above i to i; 0 at the border. */
function keptWeights(
  guides: readonly Float32Array[],
  size: PixelSize,
  way: 'across' | 'down',
  smoothing: Smoothing,
): Float32Array {
  const stride = way === 'across' ? 1 : size.width;
  const kept = new Float32Array(size.width * size.height);
  const perUnit = smoothing.spacePx / smoothing.tone;
  const fall = firstFall(smoothing.spacePx);
  const table = weightTable(fall);
  const perDifference = (entries * fall * perUnit) / Math.log(nothing);
  const [one, two = one, three = one] = guides;
  if (!one || !two || !three) throw new RangeError('Smoothing follows at least one plane');
  for (let i = stride; i < kept.length; i++) {
    const j = i - stride;
    let difference = Math.abs(one[i] - one[j]);
    if (two !== one) difference += Math.abs(two[i] - two[j]);
    if (three !== one) difference += Math.abs(three[i] - three[j]);
    const place = Math.min(entries, difference * perDifference);
    const entry = place | 0;
    const low = table[entry];
    kept[i] = low + (place - entry) * (table[entry + 1] - low);
  }
  if (way === 'across') for (let i = 0; i < kept.length; i += size.width) kept[i] = 0;
  return kept;
}

/** Half the spread is the square of every weight: what the next iteration takes. */
const narrowed = (weight: number): number => (weight < nothing ? 0 : weight * weight);

/** Work space for one line: what comes from before, pixel included, and the weight of it. */
interface Line {
  readonly sums: Float64Array;
  readonly weights: Float64Array;
}

const lineOf = (count: number): Line => ({
  sums: new Float64Array(count),
  weights: new Float64Array(count),
});

function smoothLine(
  plane: Float32Array,
  kept: Float32Array,
  start: number,
  count: number,
  { sums, weights }: Line,
  narrows: boolean,
): void {
  let sum = 0;
  let weight = 0;
  for (let i = 0; i < count; i++) {
    const k = kept[start + i];
    sum = k * sum + plane[start + i];
    weight = k * weight + 1;
    sums[i] = sum;
    weights[i] = weight;
  }
  sum = 0;
  weight = 0;
  for (let i = count - 1; i >= 0; i--) {
    const at = start + i;
    const own = plane[at];
    plane[at] = (sums[i] + sum) / (weights[i] + weight);
    const k = kept[at];
    sum = k * (sum + own);
    weight = k * (weight + 1);
    if (narrows) kept[at] = narrowed(k);
  }
}

function smoothRows(
  plane: Float32Array,
  kept: Float32Array,
  { width, height }: PixelSize,
  narrows: boolean,
): void {
  const line = lineOf(width);
  for (let y = 0; y < height; y++) smoothLine(plane, kept, y * width, width, line, narrows);
}

/** A block of columns side by side: neighbouring columns do not wait for each other's sums. */
function smoothBlock(
  plane: Float32Array,
  kept: Float32Array,
  { width, height }: PixelSize,
  left: number,
  { sums, weights }: Line,
  narrows: boolean,
): void {
  const columns = Math.min(block, width - left);
  for (let c = 0; c < columns; c++) {
    sums[c] = plane[left + c];
    weights[c] = 1;
  }
  for (let y = 1; y < height; y++) {
    for (let c = 0, at = y * width + left, to = y * block; c < columns; c++, at++, to++) {
      const k = kept[at];
      sums[to] = k * sums[to - block] + plane[at];
      weights[to] = k * weights[to - block] + 1;
    }
  }
  // The last row's entries beyond the lines hold what comes from below, pixel left out.
  const below = height * block;
  sums.fill(0, below);
  weights.fill(0, below);
  for (let y = height - 1; y >= 0; y--) {
    for (let c = 0, at = y * width + left, to = y * block; c < columns; c++, at++, to++) {
      const sum = sums[below + c];
      const weight = weights[below + c];
      const own = plane[at];
      const k = kept[at];
      plane[at] = (sums[to] + sum) / (weights[to] + weight);
      sums[below + c] = k * (sum + own);
      weights[below + c] = k * (weight + 1);
      if (narrows) kept[at] = narrowed(k);
    }
  }
}

function smoothColumns(
  plane: Float32Array,
  kept: Float32Array,
  size: PixelSize,
  narrows: boolean,
): void {
  const line = lineOf((size.height + 1) * block);
  for (let left = 0; left < size.width; left += block) {
    smoothBlock(plane, kept, size, left, line, narrows);
  }
}

/**
 * Smooths `planes` in place, not across differences in the `guides` (up to three planes, summed; they
 * may be the planes themselves: differences are taken before anything is changed). Hands back
 * control after every pass over a plane. Two planes of that size are held meanwhile.
 */
export function* edgePreserving(
  planes: readonly Float32Array[],
  guides: readonly Float32Array[],
  size: PixelSize,
  smoothing: Smoothing,
): Generator<void> {
  const across = keptWeights(guides, size, 'across', smoothing);
  yield;
  const down = keptWeights(guides, size, 'down', smoothing);
  yield;
  for (let i = 0; i < iterations; i++) {
    for (const plane of planes) {
      // The last plane of an iteration leaves the weights behind that the next one takes.
      const narrows = i < iterations - 1 && plane === planes.at(-1);
      smoothRows(plane, across, size, narrows);
      yield;
      smoothColumns(plane, down, size, narrows);
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
  yield* gaussianBlur([copy.red, copy.green, copy.blue], size, Math.max(1, blurMm * pxPerMm));
  const planes = labInPlace(copy);
  yield;
  const spacePx = Math.max(1, brushMm * pxPerMm);
  const { lightness, a, b } = planes;
  yield* edgePreserving([a, b], [lightness, a, b], size, { spacePx, tone: colourStep });
  yield* edgePreserving([lightness], [lightness], size, { spacePx, tone: lightnessStep });
  return planes;
}

import { Correlation } from '../numeric/correlation.ts';
import { runToEnd } from '../numeric/run-to-end.ts';
import { solveLinear } from '../numeric/solve.ts';
import { gaussianBlur } from '../raster/gaussian-blur.ts';
import type { LinearRaster } from '../raster/linear-raster.ts';
import type { PixelSize } from '../raster/size.ts';
import { composed, type Homography } from './homography.ts';
import { type LightPyramid, lightPlane, readPhoto } from './light-pyramid.ts';

/** How a photo lies over the expected sheet, at one fineness. */
export interface Alignment {
  /** From px of the expected sheet at that fineness to px of the photo. */
  readonly toPhoto: Homography;
  /** Correlation of the two, light and slow changes taken out, -1..1. */
  readonly likeness: number;
  /** How sure the eight unknowns of a further step are: 8 x 8, row by row, in halves of the long side. */
  readonly covariance: Float64Array;
}

/** Moved by less than this share of them, slow changes count as the same (own). */
const sameSlow = 0.05;

/** Grain and the two pictures' different sharpness are taken out over so many px (own). */
const finePx = 0.8;

/**
 * What stands off its surroundings: a plane without light and slow changes, which are those over `slowPx`; `known` are
 * the slow changes where they are known well enough.
 */
function standingOff(
  plane: Float32Array,
  size: PixelSize,
  slowPx: number,
  known?: Float32Array | null,
): { readonly fine: Float32Array; readonly slow: Float32Array } {
  let [sum, count] = [0, 0];
  for (const value of plane)
    if (!Number.isNaN(value)) {
      sum += value;
      count++;
    }
  const mean = sum / Math.max(1, count);
  const isWhole = count === plane.length;
  const fine = isWhole ? plane : plane.map((value) => (Number.isNaN(value) ? mean : value));
  const slow = known ?? Float32Array.from(fine);
  runToEnd(gaussianBlur([fine], size, finePx));
  if (!known) runToEnd(gaussianBlur([slow], size, slowPx));
  for (let i = 0; i < fine.length; i++) fine[i] -= slow[i];
  if (!isWhole)
    for (let i = 0; i < fine.length; i++) if (Number.isNaN(plane[i])) fine[i] = Number.NaN;
  return { fine, slow };
}

/** The expected sheet made ready for one fineness: what stands off, and how it changes with every unknown. */
export interface AlignmentTarget {
  readonly size: PixelSize;
  readonly slowPx: number;
  readonly plane: Float32Array;
  /** Its slopes over x and y, 0 on the border; and the mean of their squares' sum. */
  readonly slopeX: Float32Array;
  readonly slopeY: Float32Array;
  readonly steepness: number;
}

/** The unknowns of a small homography about the sheet's middle, and of brightness: gain and level. */
const unknowns = 10;

/** `slowShare` is what counts as slow, as a share of the long side. */
export function alignmentTarget(expected: LinearRaster, slowShare: number): AlignmentTarget {
  const { width, height } = expected;
  const slowPx = slowShare * Math.max(width, height);
  const plane = standingOff(lightPlane(expected).plane, expected, slowPx).fine;
  const slopeX = new Float32Array(plane.length);
  const slopeY = new Float32Array(plane.length);
  let squares = 0;
  for (let y = 1; y < height - 1; y++)
    for (let i = y * width + 1; i < (y + 1) * width - 1; i++) {
      slopeX[i] = (plane[i + 1] - plane[i - 1]) / 2;
      slopeY[i] = (plane[i + width] - plane[i - width]) / 2;
      squares += slopeX[i] ** 2 + slopeY[i] ** 2;
    }
  const steepness = squares / plane.length;
  return { size: { width, height }, slowPx, plane, slopeX, slopeY, steepness };
}

function correlation(one: Float32Array, two: Float32Array): number {
  const both = new Correlation();
  for (let i = 0; i < one.length; i++) if (!Number.isNaN(one[i])) both.add(one[i], two[i]);
  // Where much lies off the photo, what is left is no proof.
  return both.value() * (both.count / one.length);
}

export const seenBy = (
  photo: LightPyramid,
  toPhoto: Homography,
  { size, slowPx }: AlignmentTarget,
): Float32Array => standingOff(readPhoto(photo, toPhoto, size), size, slowPx).fine;

/** How alike photo and expected sheet are where a homography lays the one over the other. */
export const likenessOf = (
  photo: LightPyramid,
  toPhoto: Homography,
  target: AlignmentTarget,
): number => correlation(seenBy(photo, toPhoto, target), target.plane);

/** Pixels whose slope squared is under this share of the mean say nothing of place (own): a third or more of them. */
const flatUnder = 0.05;

/** Median of the absolute values of every few pixels, as a deviation. */
function spreadOf(left: Float32Array): number {
  const stride = Math.max(1, Math.floor(left.length / 1500));
  const every = new Float32Array(Math.ceil(left.length / stride));
  let count = 0;
  for (let i = 0; i < left.length; i += stride)
    if (!Number.isNaN(left[i])) every[count++] = Math.abs(left[i]);
  const some = every.subarray(0, count).sort();
  return Math.max(1e-5, 1.4826 * (some[count >> 1] ?? 0));
}

/** Gain and level that bring the photo's plane to the target's, least squares over what both have. */
function brightnessOf(seen: Float32Array, plane: Float32Array) {
  let [n, x, y, xx, xy] = [0, 0, 0, 0, 0];
  for (let i = 0; i < seen.length; i++) {
    const u = seen[i];
    if (Number.isNaN(u)) continue;
    n++;
    x += u;
    y += plane[i];
    xx += u * u;
    xy += u * plane[i];
  }
  const spread = xx - (x * x) / n;
  const gain = spread > 0 ? Math.max(0, (xy - (x * y) / n) / spread) : 0;
  return { gain, level: (y - gain * x) / Math.max(1, n) };
}

/**
 * Turns and stretches the photo so that it lies on the expected sheet: Gauss and Newton's steps on the target's own
 * slopes, after Baker, S. and Matthews, I. (2004), Lucas-Kanade 20 years on, Int. J. Comput. Vis. 56, 221-255
 * (inverse compositional), with gain and level of brightness as unknowns, and what differs much left out by Geman and
 * McClure's weights.
 */
export function align(
  photo: LightPyramid,
  start: Homography,
  target: AlignmentTarget,
  rounds: number,
): Alignment {
  const { size, slowPx, plane, slopeX, slopeY, steepness } = target;
  const { width, height } = size;
  const half = Math.max(width, height) / 2;
  let toPhoto = start;
  let variance = 1;
  let known: Float32Array | null = null;
  const matrix = new Float64Array(unknowns * unknowns);
  const right = new Float64Array(unknowns);
  const row = new Float64Array(unknowns);
  const left = new Float32Array(plane.length);
  for (let round = 0; round < rounds; round++) {
    const { fine: seen, slow } = standingOff(readPhoto(photo, toPhoto, size), size, slowPx, known);
    known = null;
    const { gain, level } = brightnessOf(seen, plane);
    for (let i = 0; i < left.length; i++) left[i] = gain * seen[i] + level - plane[i];
    const scale = 2 * spreadOf(left);
    const flat = flatUnder * half * half * steepness;
    matrix.fill(0);
    right.fill(0);
    let [weightSum, squares] = [0, 0];
    for (let y = 1; y < height - 1; y++) {
      const v = (y + 0.5 - height / 2) / half;
      for (let x = 1, i = y * width + 1; x < width - 1; x++, i++) {
        const off = left[i];
        if (Number.isNaN(off)) continue;
        const sx = slopeX[i] * half;
        const sy = slopeY[i] * half;
        const u = (x + 0.5 - width / 2) / half;
        const away = off / scale;
        const weight = 1 / (1 + away * away) ** 2;
        const along = sx * u + sy * v;
        row[0] = sx * u;
        row[1] = sx * v;
        row[2] = sx;
        row[3] = sy * u;
        row[4] = sy * v;
        row[5] = sy;
        row[6] = -along * u;
        row[7] = -along * v;
        row[8] = plane[i];
        row[9] = 1;
        weightSum += weight;
        squares += weight * off * off;
        // Where the target is flat, only its brightness tells.
        for (let k = sx * sx + sy * sy < flat ? 8 : 0; k < unknowns; k++) {
          const own = weight * row[k];
          right[k] += own * off;
          const line = k * unknowns;
          for (let j = 0; j <= k; j++) matrix[line + j] += own * row[j];
        }
      }
    }
    // A touch of 'stay' where nothing tells, worth a few pixels.
    const steady = 1e-4 * (matrix[0] + matrix[4 * unknowns + 4]) + 1e-9;
    for (let k = 0; k < 8; k++) matrix[k * unknowns + k] += steady;
    matrix[8 * unknowns + 8] += 1e-9;
    matrix[9 * unknowns + 9] += 1e-9;
    variance = squares / Math.max(1, weightSum);
    const step = Float64Array.from(right);
    if (!solveLinear(Float64Array.from(matrix), step, unknowns)) break;
    toPhoto = composed(toPhoto, smallStep(step, width, height, half));
    const moved = Math.max(...step.subarray(0, 8).map(Math.abs)) * half;
    if (moved < 0.04) break;
    // Slow changes are the same ones a little way off.
    if (moved < sameSlow * slowPx && seen.every((value) => !Number.isNaN(value))) known = slow;
  }
  const covariance = covarianceOf(matrix, variance);
  return { toPhoto, likeness: likenessOf(photo, toPhoto, target), covariance };
}

/** The step as a homography of the sheet's px: it goes against the photo's. */
export function smallStep(
  p: Float64Array,
  width: number,
  height: number,
  half: number,
): Homography {
  const small = Float64Array.of(1 - p[0], -p[1], -p[2], -p[3], 1 - p[4], -p[5], -p[6], -p[7], 1);
  const into = Float64Array.of(
    1 / half,
    0,
    -width / 2 / half,
    0,
    1 / half,
    -height / 2 / half,
    0,
    0,
    1,
  );
  const back = Float64Array.of(half, 0, width / 2, 0, half, height / 2, 0, 0, 1);
  return composed(back, composed(small, into));
}

/** Pixels beside each other are not independent: errors are so many times what counting them says (own). */
const dependence = 15;

/** The equations' own certainty of the unknowns of place, gain and level being unknown too. */
function covarianceOf(matrix: Float64Array, variance: number): Float64Array {
  const covariance = new Float64Array(64);
  const times = variance * dependence * dependence;
  for (let k = 0; k < 8; k++) {
    const column = new Float64Array(unknowns);
    column[k] = 1;
    if (solveLinear(Float64Array.from(matrix), column, unknowns))
      for (let j = 0; j < 8; j++) covariance[8 * j + k] = times * column[j];
    else covariance[9 * k] = 1;
  }
  return covariance;
}

/** How the unknowns move a place of the sheet along x and along y; u, v in halves of the long side from its middle. */
export function displacementRows(u: number, v: number): readonly [Float64Array, Float64Array] {
  return [
    Float64Array.of(u, v, 1, 0, 0, 0, -u * u, -u * v),
    Float64Array.of(0, 0, 0, u, v, 1, -v * u, -v * v),
  ];
}

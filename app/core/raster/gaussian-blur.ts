// Gaussian blur by three passes of an extended box (a box whose two end samples carry a fraction, so
// that any width can be met). Source: Gwosdek, Grewenig, Bruhn, Weickert, 'Theoretical Foundations
// of Gaussian Convolution by Extended Box Filtering', 2011. Beyond the border the border pixel goes on.
import { runToEnd } from '../numeric/run-to-end.ts';
import type { PixelSize } from './size.ts';

const passes = 3;
/** Columns taken at a time going down: one cache line of floats. */
const block = 16;

interface Box {
  readonly radius: number;
  /** Weight of the two end samples at radius + 1, the inner ones weigh 1. */
  readonly end: number;
}

/** The box of variance sigma^2 / passes. */
function boxOf(sigmaPx: number): Box {
  const variance = (sigmaPx * sigmaPx) / passes;
  const radius = Math.floor((Math.sqrt(12 * variance + 1) - 1) / 2);
  const length = 2 * radius + 1;
  const end =
    (length * (radius * (radius + 1) - 3 * variance)) / (6 * (variance - (radius + 1) ** 2));
  return { radius, end };
}

/** One pass over `count` samples from `from` to `to`, both tightly packed. */
function boxPass(from: Float32Array, to: Float32Array, count: number, box: Box): void {
  const { radius, end } = box;
  const last = count - 1;
  const weight = 1 / (2 * radius + 1 + 2 * end);
  // Sums of floats of 24 bits in doubles of 53 are exact here: flat stays flat.
  let sum = 0;
  for (let i = -radius; i <= radius; i++) sum += from[i < 0 ? 0 : Math.min(i, last)];
  for (let i = 0; i < count; i++) {
    const before = i - radius - 1;
    const after = i + radius + 1;
    const low = from[Math.max(before, 0)];
    const high = from[Math.min(after, last)];
    to[i] = weight * (sum + end * (low + high));
    const leaving = i - radius;
    sum += high - from[Math.max(leaving, 0)];
  }
}

function blurLine(line: Float32Array, spare: Float32Array, count: number, box: Box): Float32Array {
  boxPass(line, spare, count, box);
  boxPass(spare, line, count, box);
  boxPass(line, spare, count, box);
  return spare;
}

function blurRows(plane: Float32Array, { width, height }: PixelSize, box: Box): void {
  const line = new Float32Array(width);
  const spare = new Float32Array(width);
  for (let y = 0; y < height; y++) {
    line.set(plane.subarray(y * width, (y + 1) * width));
    plane.set(blurLine(line, spare, width, box), y * width);
  }
}

function blurColumns(plane: Float32Array, { width, height }: PixelSize, box: Box): void {
  const lines = Array.from({ length: block }, () => new Float32Array(height));
  const spare = new Float32Array(height);
  for (let left = 0; left < width; left += block) {
    const columns = Math.min(block, width - left);
    for (let y = 0; y < height; y++) {
      const at = y * width + left;
      for (let c = 0; c < columns; c++) {
        (lines[c] as Float32Array)[y] = plane[at + c];
      }
    }
    for (let c = 0; c < columns; c++) {
      const line = lines[c] as Float32Array;
      line.set(blurLine(line, spare, height, box));
    }
    for (let y = 0; y < height; y++) {
      const at = y * width + left;
      for (let c = 0; c < columns; c++) plane[at + c] = (lines[c] as Float32Array)[y];
    }
  }
}

/**
 * Blurs planes in place, sigma in px, handing back control after every pass over a plane. Weights
 * sum to one; flat stays flat; mirrored in gives mirrored out (to rounding). RangeError unless
 * sigma is above 0.
 */
export function* gaussianBlur(
  planes: readonly Float32Array[],
  size: PixelSize,
  sigmaPx: number,
): Generator<void> {
  if (!(sigmaPx > 0)) throw new RangeError(`A blur is wider than ${sigmaPx} px`);
  const box = boxOf(sigmaPx);
  for (const plane of planes) {
    blurRows(plane, size, box);
    yield;
    blurColumns(plane, size, box);
    yield;
  }
}

/**
 * Blurs planes in place where there is weight, and only by what has weight: beyond a border nothing runs in. Weights
 * are at least 0; a place far from all weight keeps what it has.
 */
export function blurWithin(
  planes: readonly Float32Array[],
  weights: Float32Array,
  size: PixelSize,
  sigmaPx: number,
): void {
  const spread = Float32Array.from(weights);
  const weighted = planes.map((plane) => plane.map((value, i) => value * weights[i]));
  runToEnd(gaussianBlur([spread, ...weighted], size, sigmaPx));
  for (const [n, plane] of planes.entries()) {
    for (let i = 0; i < plane.length; i++) {
      if (spread[i] > 1e-5) plane[i] = weighted[n][i] / spread[i];
    }
  }
}

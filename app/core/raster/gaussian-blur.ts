// Gaussian blur by three passes of an extended box (a box whose two end samples carry a fraction, so
// that any width can be met). Source: Gwosdek, Grewenig, Bruhn, Weickert, 'Theoretical Foundations
// of Gaussian Convolution by Extended Box Filtering', 2011. Beyond the border the border pixel goes on.
import { runToEnd } from '../numeric/run-to-end.ts';
import type { PixelSize } from './size.ts';
import { stripRows, turnStrip } from './turn-rows.ts';

const passes = 3;

interface Box {
  readonly radius: number;
  /** Weight of the two end samples at radius + 1, the inner ones weigh 1. */
  readonly end: number;
  /** One over the sum of them all. */
  readonly weight: number;
}

/** The box of variance sigma^2 / passes. */
export function boxOf(sigmaPx: number): Box {
  const variance = (sigmaPx * sigmaPx) / passes;
  const radius = Math.floor((Math.sqrt(12 * variance + 1) - 1) / 2);
  const length = 2 * radius + 1;
  const end =
    (length * (radius * (radius + 1) - 3 * variance)) / (6 * (variance - (radius + 1) ** 2));
  return { radius, end, weight: 1 / (length + 2 * end) };
}

/** One pass over `count` samples from `from` to `to`, both tightly packed. */
function boxPass(from: Float32Array, to: Float32Array, count: number, box: Box): void {
  const { radius, end, weight } = box;
  const last = count - 1;
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

/** Blurs the rows of `from` and writes them as columns of `to`. */
function blurTurned(
  from: Float32Array,
  to: Float32Array,
  { width, height }: PixelSize,
  box: Box,
): void {
  const spare = new Float32Array(width);
  const strip = new Float32Array(stripRows * width);
  for (let top = 0; top < height; top += stripRows) {
    const rows = Math.min(stripRows, height - top);
    for (let row = 0; row < rows; row++) {
      const at = (top + row) * width;
      const line = strip.subarray(row * width, (row + 1) * width);
      boxPass(from.subarray(at, at + width), line, width, box);
      boxPass(line, spare, width, box);
      boxPass(spare, line, width, box);
    }
    turnStrip(strip, rows, width, to, height, top);
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
  const turned = new Float32Array(size.width * size.height);
  for (const plane of planes) {
    blurTurned(plane, turned, size, box);
    yield;
    blurTurned(turned, plane, { width: size.height, height: size.width }, box);
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
  const weighted = planes.map((plane) => {
    const own = plane.slice();
    for (let i = 0; i < own.length; i++) own[i] *= weights[i];
    return own;
  });
  runToEnd(gaussianBlur([spread, ...weighted], size, sigmaPx));
  for (const [n, plane] of planes.entries()) {
    for (let i = 0; i < plane.length; i++) {
      if (spread[i] > 1e-5) plane[i] = weighted[n][i] / spread[i];
    }
  }
}

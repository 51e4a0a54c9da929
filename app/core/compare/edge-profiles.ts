import type { Point } from '../colour/lab.ts';
import { solveLinear } from '../numeric/solve.ts';
import type { PixelSize } from '../raster/size.ts';
import { pixelStates } from './measured-sheet.ts';

/** A place on an edge and the direction across it, px. */
export interface Place {
  readonly x: number;
  readonly y: number;
  readonly nx: number;
  readonly ny: number;
}

/** Places along a course, evenly apart. */
export function placesAlong(
  path: readonly Point[],
  { width, height }: PixelSize,
  stepPx: number,
): Place[] {
  const places: Place[] = [];
  let rest = 0;
  for (let n = 1; n < path.length; n++) {
    const [x, y] = [path[n - 1][0] * width, path[n - 1][1] * height];
    const [dx, dy] = [path[n][0] * width - x, path[n][1] * height - y];
    const length = Math.hypot(dx, dy);
    for (; rest < length; rest += stepPx) {
      const part = rest / length;
      places.push({ x: x + part * dx, y: y + part * dy, nx: -dy / length, ny: dx / length });
    }
    rest -= length;
  }
  return places;
}

export const samplesEachWay = 12;
export const samples = 2 * samplesEachWay + 1;

/** Adds lightness across a place to a profile; false where a pixel does not count. */
export function addProfile(
  plane: Float32Array,
  states: Uint8Array | null,
  { width, height }: PixelSize,
  { x, y, nx, ny }: Place,
  spacing: number,
  out: Float64Array,
): boolean {
  for (let k = 0; k < samples; k++) {
    const away = (k - samplesEachWay) * spacing;
    const [px, py] = [x + away * nx - 0.5, y + away * ny - 0.5];
    const [column, row] = [Math.floor(px), Math.floor(py)];
    if (column < 0 || row < 0 || column >= width - 1 || row >= height - 1) return false;
    const i = row * width + column;
    if (states && states[i] !== pixelStates.counts) return false;
    const [u, v] = [px - column, py - row];
    const top = plane[i] + u * (plane[i + 1] - plane[i]);
    const low = plane[i + width] + u * (plane[i + width + 1] - plane[i + width]);
    out[k] += top + v * (low - top);
  }
  return true;
}

/** Contrasts must be alike, or it is the shapes that differ: at least this share of the drawn one (own). */
export const leastLike = 0.5;

/** How far an edge has come from hard, 0, to as soft as drawn, 1, at a place, and what that place can tell. */
export interface Softened {
  readonly way: number;
  /** Sum of squares of what softening changes there and nothing else does, in squared L*. */
  readonly told: number;
}

/** A hand and the place that was found stray so far across an edge, samples. */
const strays = 3;

/**
 * How far a painted profile has come from the `hard` one to the `soft` one: least squares over level, contrast and
 * what softening changes, laid where it fits best. Null where nothing tells.
 */
export function softenedAt(
  came: Float64Array,
  hard: Float64Array,
  soft: Float64Array,
): Softened | null {
  let best: (Softened & { readonly left: number; readonly gain: number }) | null = null;
  const from = strays;
  const to = samples - strays;
  for (let shift = -strays; shift <= strays; shift++) {
    const matrix = new Float64Array(9);
    const right = new Float64Array(3);
    let squares = 0;
    for (let k = from; k < to; k++) {
      const row = [1, hard[k], soft[k] - hard[k]];
      const value = came[k + shift];
      squares += value * value;
      for (let i = 0; i < 3; i++) {
        right[i] += row[i] * value;
        for (let j = 0; j <= i; j++) matrix[3 * i + j] += row[i] * row[j];
      }
    }
    const solved = Float64Array.from(right);
    if (!solveLinear(matrix, solved, 3)) return null;
    const left = squares - solved.reduce((sum, value, i) => sum + value * right[i], 0);
    // The last pivot of the factors is what is left of its column beside the others.
    const [, gain, more] = solved;
    if (!best || left < best.left)
      best = { left, gain, way: more / gain, told: matrix[8] * matrix[8] };
  }
  return best && best.gain > leastLike && best.gain < 1 / leastLike ? best : null;
}

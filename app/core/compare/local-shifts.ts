import { Correlation } from '../numeric/correlation.ts';
import { solveLinear } from '../numeric/solve.ts';
import { type AlignmentTarget, seenBy } from './align.ts';
import { composed, type Homography } from './homography.ts';
import type { LightPyramid } from './light-pyramid.ts';

/** Parts of the sheet each way, and how far they are moved to see where they fit best, px. */
const across = 4;
const down = 3;
const reach = 5;
/** A part has gone astray that fits so much better elsewhere, by so many px (own). */
const betterBy = 0.06;
const astrayFrom = 2;
/** A part with less structure than this share of the whole's says nothing (own). */
const leastStructure = 0.25;

/** Correlation of a part of the target with the photo's plane, moved by (dx, dy). */
function fitAt(
  plane: Float32Array,
  seen: Float32Array,
  width: number,
  [left, top, right, bottom]: readonly [number, number, number, number],
  dx: number,
  dy: number,
): number {
  const both = new Correlation();
  for (let row = top; row < bottom; row++)
    for (let column = left; column < right; column++) {
      const moved = seen[(row + dy) * width + column + dx];
      if (!Number.isNaN(moved)) both.add(plane[row * width + column], moved);
    }
  return both.value();
}

interface Shift {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
  readonly isAstray: boolean;
}

/**
 * Whether parts of the sheet would fit better elsewhere than where a homography lays them: the share of those that
 * can be told, and the homography mended by where they want to go; null where too few can be told.
 */
export function localShifts(
  photo: LightPyramid,
  toPhoto: Homography,
  target: AlignmentTarget,
): { readonly astray: number; readonly mended: Homography | null } {
  const { plane, size } = target;
  const { width, height } = size;
  const seen = seenBy(photo, toPhoto, target);
  const structure = (from: number, to: number, top: number, bottom: number): number => {
    let sum = 0;
    for (let y = top; y < bottom; y++)
      for (let x = from; x < to; x++) sum += plane[y * width + x] ** 2;
    return sum / Math.max(1, (to - from) * (bottom - top));
  };
  const whole = structure(0, width, 0, height);
  const shifts: Shift[] = [];
  const edge = (n: number, count: number, side: number): number =>
    Math.round(reach + (n * (side - 2 * reach)) / count);
  for (let row = 0; row < down; row++)
    for (let column = 0; column < across; column++) {
      const box = [
        edge(column, across, width),
        edge(row, down, height),
        edge(column + 1, across, width),
        edge(row + 1, down, height),
      ] as const;
      if (structure(box[0], box[2], box[1], box[3]) < leastStructure * whole) continue;
      const here = fitAt(plane, seen, width, box, 0, 0);
      let best = { fit: here, dx: 0, dy: 0 };
      for (let dy = -reach; dy <= reach; dy++)
        for (let dx = -reach; dx <= reach; dx++) {
          const fit = fitAt(plane, seen, width, box, dx, dy);
          if (fit > best.fit) best = { fit, dx, dy };
        }
      const isAstray =
        best.fit > here + betterBy && Math.hypot(best.dx, best.dy) >= astrayFrom && best.fit > 0.5;
      const [x, y] = [(box[0] + box[2]) / 2, (box[1] + box[3]) / 2];
      shifts.push({ x, y, dx: best.dx, dy: best.dy, isAstray });
    }
  if (shifts.length === 0) return { astray: 1, mended: null };
  const astray = shifts.filter(({ isAstray }) => isAstray).length / shifts.length;
  return { astray, mended: mendedBy(shifts, toPhoto, width, height) };
}

/** The affine change that takes parts where they want to go, before the homography; null for too few parts. */
function mendedBy(
  shifts: readonly Shift[],
  toPhoto: Homography,
  width: number,
  height: number,
): Homography | null {
  if (shifts.length < 4) return null;
  const solved = (value: (shift: Shift) => number): Float64Array => {
    const matrix = new Float64Array(9);
    const right = new Float64Array(3);
    for (const shift of shifts) {
      const row = [1, shift.x - width / 2, shift.y - height / 2];
      for (let i = 0; i < 3; i++) {
        right[i] += row[i] * value(shift);
        for (let j = 0; j < 3; j++) matrix[3 * i + j] += row[i] * row[j];
      }
    }
    for (let i = 1; i < 3; i++) matrix[4 * i] += 100;
    solveLinear(matrix, right, 3);
    return right;
  };
  const [x0, xx, xy] = solved(({ dx }) => dx);
  const [y0, yx, yy] = solved(({ dy }) => dy);
  const [u, v] = [width / 2, height / 2];
  const change = Float64Array.of(
    ...[1 + xx, xy, x0 - xx * u - xy * v],
    ...[yx, 1 + yy, y0 - yx * u - yy * v],
    ...[0, 0, 1],
  );
  return composed(toPhoto, change);
}

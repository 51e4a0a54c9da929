import type { Point } from '../colour/lab.ts';
import { solveSquare } from '../numeric/solve.ts';

/** Four points, clockwise from the sheet's own upper left corner. */
export type Corners = readonly [Point, Point, Point, Point];

/**
 * How one plane is seen as another: nine numbers, row by row, the last one 1. (x, y) goes to
 * ((h0 x + h1 y + h2) / w, (h3 x + h4 y + h5) / w) with w = h6 x + h7 y + h8. Hartley, R. and Zisserman, A. (2004),
 * Multiple View Geometry in Computer Vision, 2nd ed., 2.3.
 */
export type Homography = Float64Array;

export function project(h: Homography, x: number, y: number): Point {
  const w = h[6] * x + h[7] * y + h[8];
  return [(h[0] * x + h[1] * y + h[2]) / w, (h[3] * x + h[4] * y + h[5]) / w];
}

/** Whether four points go round in one direction, as the corners of a sheet do however it is seen. */
export function isConvex(corners: Corners): boolean {
  const turns = corners.map(([x, y], n) => {
    const [ax, ay] = corners[(n + 1) % 4];
    const [bx, by] = corners[(n + 2) % 4];
    return (ax - x) * (by - ay) - (ay - y) * (bx - ax);
  });
  return turns.every((turn) => turn > 0) || turns.every((turn) => turn < 0);
}

/** What takes four points to four others; null where three of them lie on a line. */
export function homographyOf(from: Corners, to: Corners): Homography | null {
  if (!isConvex(from) || !isConvex(to)) return null;
  const matrix = new Float64Array(64);
  const right = new Float64Array(8);
  for (let n = 0; n < 4; n++) {
    const [x, y] = from[n];
    const [u, v] = to[n];
    matrix.set([x, y, 1, 0, 0, 0, -u * x, -u * y], 16 * n);
    matrix.set([0, 0, 0, x, y, 1, -v * x, -v * y], 16 * n + 8);
    right[2 * n] = u;
    right[2 * n + 1] = v;
  }
  if (!solveSquare(matrix, right, 8)) return null;
  return Float64Array.of(...right, 1);
}

/** One after the other: first `first`, then `second`. */
export function composed(second: Homography, first: Homography): Homography {
  const out = new Float64Array(9);
  for (let row = 0; row < 3; row++)
    for (let column = 0; column < 3; column++)
      for (let k = 0; k < 3; k++)
        out[3 * row + column] += second[3 * row + k] * first[3 * k + column];
  return out.map((value) => value / out[8]);
}

/** The corners of a rectangle from (0, 0), clockwise from its upper left. */
export const cornersOf = (width: number, height: number): Corners => [
  [0, 0],
  [width, 0],
  [width, height],
  [0, height],
];

/** Corners in another unit: shares of a picture's sides in px, or back with one over its size. */
export const scaledCorners = (corners: Corners, x: number, y: number): Corners => {
  const scaled = ([u, v]: Point): Point => [u * x, v * y];
  return [scaled(corners[0]), scaled(corners[1]), scaled(corners[2]), scaled(corners[3])];
};

/** Places of a picture as shares of the sheet whose corners are seen there; none where these don't go round one. */
export function placesOnSheet(places: readonly Point[], corners: Corners): Point[] {
  const h = homographyOf(corners, cornersOf(1, 1));
  return h ? places.map(([x, y]) => project(h, x, y)) : [];
}

import type { Point } from '../colour/lab.ts';
import type { PixelSize } from '../raster/size.ts';
import { type Corners, isConvex } from './homography.ts';

/** Edges along the photo's own frame are where the sheet was cut off: they go first (own). */
const frameCosts = 0.05;
/** A sheet fills at least so much of the photo (own): less is too coarse to be judged. */
const leastArea = 0.08;

const cross = ([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point): number =>
  (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);

/** The convex outline of points, clockwise on a picture: Andrew (1979), monotone chains. */
function hullOf(points: readonly Point[]): Point[] {
  const sorted = [...points].sort((one, two) => one[0] - two[0] || one[1] - two[1]);
  const chain = (list: readonly Point[]): Point[] => {
    const out: Point[] = [];
    for (const point of list) {
      while (out.length > 1 && cross(out[out.length - 2], out[out.length - 1], point) <= 0)
        out.pop();
      out.push(point);
    }
    return out.slice(0, -1);
  };
  return [...chain(sorted), ...chain(sorted.toReversed())];
}

/** The ends of every row of a mask, as corners of its pixels. */
function rimOf(mask: Uint8Array, { width, height }: PixelSize): Point[] {
  const points: Point[] = [];
  for (let y = 0; y < height; y++) {
    let [first, last] = [-1, -1];
    for (let x = 0; x < width; x++)
      if (mask[y * width + x]) {
        if (first < 0) first = x;
        last = x;
      }
    if (first < 0) continue;
    points.push([first, y], [first, y + 1], [last + 1, y], [last + 1, y + 1]);
  }
  return points;
}

/** Where two lines meet, each through two points; null where they hardly do. */
function meeting([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point, [dx, dy]: Point): Point | null {
  const [ux, uy, vx, vy] = [bx - ax, by - ay, dx - cx, dy - cy];
  const det = ux * vy - uy * vx;
  if (Math.abs(det) < 1e-9) return null;
  const t = ((cx - ax) * vy - (cy - ay) * vx) / det;
  return [ax + t * ux, ay + t * uy];
}

/**
 * The quadrangle round what a mask holds, px, clockwise: its convex outline, whose edges are given up one by one, those
 * on either side being drawn on until they meet, always where least is added. Null where that is no sheet.
 */
export function outerQuad(mask: Uint8Array, size: PixelSize): Corners | null {
  const { width, height } = size;
  const hull = hullOf(rimOf(mask, size));
  const isOnFrame = ([ax, ay]: Point, [bx, by]: Point): boolean =>
    (ax <= 1 && bx <= 1) ||
    (ay <= 1 && by <= 1) ||
    (ax >= width - 1 && bx >= width - 1) ||
    (ay >= height - 1 && by >= height - 1);
  while (hull.length > 4) {
    let best: { readonly n: number; readonly at: Point; readonly cost: number } | null = null;
    for (let n = 0; n < hull.length; n++) {
      const [before, from, to, after] = [-1, 0, 1, 2].map(
        (k) => hull[(n + k + hull.length) % hull.length],
      );
      const at = meeting(before, from, after, to);
      // The neighbours must meet beyond the edge.
      if (!at || cross(from, to, at) > 0) continue;
      const added = Math.abs(cross(from, to, at)) / 2;
      const cost = added * (isOnFrame(from, to) ? frameCosts : 1);
      if (!best || cost < best.cost) best = { n, at, cost };
    }
    if (!best) return null;
    const { n, at } = best;
    const next = (n + 1) % hull.length;
    hull[n] = at;
    hull.splice(next, 1);
  }
  if (hull.length < 4) return null;
  const corners: Corners = [hull[0], hull[1], hull[2], hull[3]];
  const area =
    Math.abs(cross(corners[0], corners[1], corners[2])) / 2 +
    Math.abs(cross(corners[0], corners[2], corners[3])) / 2;
  return isConvex(corners) && area >= leastArea * width * height ? corners : null;
}

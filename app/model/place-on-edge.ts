import type { Edge } from './edge.ts';
import type { Point } from './lab.ts';
import { nearestEdge, nearestOnEdge } from './nearest-edge.ts';
import type { PixelSize } from './pixel-size.ts';

type Line = Pick<Edge, 'path'>;

/** This far from all other edges a place tells which is meant, as a share of the long side. */
const clear = 0.003;

/** The spot after a part (0..1) of an edge's course, 0..1 of the picture's sides. */
export function alongEdge({ path }: Line, part: number, { width, height }: PixelSize): Point {
  const steps = path.slice(1).map(([x, y], i) => {
    const [fromX, fromY] = path[i] as Point;
    return Math.hypot((x - fromX) * width, (y - fromY) * height);
  });
  let rest = part * steps.reduce((sum, step) => sum + step, 0);
  for (const [i, step] of steps.entries()) {
    if (rest <= step && step > 0) {
      const [x0, y0] = path[i] as Point;
      const [x1, y1] = path[i + 1] as Point;
      return [x0 + (rest / step) * (x1 - x0), y0 + (rest / step) * (y1 - y0)];
    }
    rest -= step;
  }
  return path.at(-1) ?? [0.5, 0.5];
}

/**
 * A place on one edge that no other edge lies near, so that a decision kept there finds this one again:
 * where she touched it if that will do, else further along. Null for an edge without a course.
 */
export function placeOnEdge(
  edges: readonly Line[],
  index: number,
  size: PixelSize,
  touched?: Point,
): Point | null {
  const edge = edges[index];
  if (!edge || edge.path.length === 0) return null;
  const spots = [0.5, 0.35, 0.65, 0.2, 0.8].map((part) => alongEdge(edge, part, size));
  if (touched) spots.unshift(nearestOnEdge(edge, touched, size).at);
  let best: Point | null = null;
  let widest = -1;
  for (const spot of spots) {
    const gap = nearestEdge(edges, spot, size, clear, index)?.distance ?? clear;
    if (gap <= widest) continue;
    best = spot;
    widest = gap;
    if (gap >= clear) break;
  }
  return best;
}

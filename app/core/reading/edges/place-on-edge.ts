import type { Point } from '../../colour/lab.ts';
import type { PixelSize } from '../../raster/size.ts';
import type { Edge } from './edge.ts';

/** The edge a place comes nearest to. */
interface NearEdge {
  /** Its place in the list. */
  readonly index: number;
  /** As a share of the picture's long side. */
  readonly distance: number;
  /** The spot of the edge that is nearest; 0..1 of the picture's sides. */
  readonly point: Point;
}

type Line = Pick<Edge, 'path'>;

/** The spot of one edge nearest to a place, both 0..1 of a picture of that size. */
export function nearestOnEdge(
  { path }: Line,
  [x, y]: Point,
  size: PixelSize,
): Omit<NearEdge, 'index'> {
  const long = Math.max(size.width, size.height);
  const wide = size.width / long;
  const high = size.height / long;
  let distance = Number.POSITIVE_INFINITY;
  let point: Point = [x, y];
  for (let i = 0; i < path.length; i++) {
    const [x0, y0] = path[Math.max(0, i - 1)];
    const [x1, y1] = path[i];
    const alongX = (x1 - x0) * wide;
    const alongY = (y1 - y0) * high;
    const square = alongX * alongX + alongY * alongY;
    const projected = (x - x0) * wide * alongX + (y - y0) * high * alongY;
    const part = square > 0 ? Math.min(1, Math.max(0, projected / square)) : 0;
    const spot: Point = [x0 + part * (x1 - x0), y0 + part * (y1 - y0)];
    const way = Math.hypot((x - spot[0]) * wide, (y - spot[1]) * high);
    if (way >= distance) continue;
    distance = way;
    point = spot;
  }
  return { distance, point };
}

/**
 * The edge whose line comes nearest to a place (0..1 of the picture's sides), the first of equals; null
 * where none comes within `reach`, a share of the long side. `skip`: an edge not looked at.
 */
export function nearestEdge(
  edges: readonly Line[],
  place: Point,
  size: PixelSize,
  reach: number,
  skip = -1,
): NearEdge | null {
  let nearest: NearEdge | null = null;
  edges.forEach((edge, index) => {
    if (index === skip) return;
    const { distance, point } = nearestOnEdge(edge, place, size);
    if (distance > reach || (nearest && distance >= nearest.distance)) return;
    nearest = { index, distance, point };
  });
  return nearest;
}

/** This far from all other edges a place tells which is meant, as a share of the long side. */
const clear = 0.003;

/** The spot after a part (0..1) of an edge's course, 0..1 of the picture's sides. */
export function alongEdge({ path }: Line, part: number, { width, height }: PixelSize): Point {
  const steps = path.slice(1).map(([x, y], i) => {
    const [fromX, fromY] = path[i];
    return Math.hypot((x - fromX) * width, (y - fromY) * height);
  });
  let rest = part * steps.reduce((sum, step) => sum + step, 0);
  for (const [i, step] of steps.entries()) {
    if (rest <= step && step > 0) {
      const [x0, y0] = path[i];
      const [x1, y1] = path[i + 1];
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
  if (touched) spots.unshift(nearestOnEdge(edge, touched, size).point);
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

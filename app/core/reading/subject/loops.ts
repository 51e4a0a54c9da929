import type { Point } from '../../colour/lab.ts';

/** On which side of the way from o to a the point b lies. */
const turn = (o: Point, a: Point, b: Point): number =>
  (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0]);

/** Half a hull, its last point left out. */
function halfHull(points: readonly Point[]): Point[] {
  const hull: Point[] = [];
  for (const point of points) {
    for (;;) {
      const [before, last] = [hull.at(-2), hull.at(-1)];
      if (!before || !last || turn(before, last, point) > 0) break;
      hull.pop();
    }
    hull.push(point);
  }
  return hull.slice(0, -1);
}

/** The convex hull of points, going round once (Andrew, 'Another Efficient Algorithm for Convex Hulls', 1979). */
export function convexHull(points: readonly Point[]): Point[] {
  const sorted = [...points].sort(([ax, ay], [bx, by]) => ax - bx || ay - by);
  return [...halfHull(sorted), ...halfHull(sorted.reverse())];
}

/** The loop from its point n round to that point again. */
const roundFrom = (loop: readonly Point[], n: number): Point[] => [
  ...loop.slice(n),
  ...loop.slice(0, n + 1),
];

/** One or two loops as one line that encloses both: at their nearest points it runs across and back. */
export function joinLoops([one, other]: readonly (readonly Point[])[]): Point[] {
  if (!other) return [...(one ?? [])];
  let [from, to, least] = [0, 0, Number.POSITIVE_INFINITY];
  for (const [i, [x, y]] of one.entries()) {
    for (const [j, [u, v]] of other.entries()) {
      const distance = Math.hypot(x - u, y - v);
      if (distance >= least) continue;
      [from, to, least] = [i, j, distance];
    }
  }
  return [...roundFrom(one, from), ...roundFrom(other, to)];
}

import type { Point } from './lab.ts';
import { simplifyLine } from './simplify-line.ts';

/** Places are set this far apart before smoothing, mm. */
const stepMm = 0.4;
/** Half the length of the box that takes out what a pencil does not follow, places; used twice. */
const boxHalf = 2;
/** The line drawn stays this near to the smoothed one, mm: under the width of a pencil's line. */
const withinMm = 0.08;

/** Places an even way apart along a line, its ends kept. */
function evenly(points: readonly Point[]): Point[] {
  const even: Point[] = [];
  points.forEach((to, n) => {
    const from = points[n - 1];
    if (!from) {
      even.push(to);
      return;
    }
    const steps = Math.max(1, Math.round(Math.hypot(to[0] - from[0], to[1] - from[1]) / stepMm));
    for (let k = 1; k <= steps; k++) {
      const part = k / steps;
      even.push([from[0] + part * (to[0] - from[0]), from[1] + part * (to[1] - from[1])]);
    }
  });
  return even;
}

/** One pass of a box; of an open line it shrinks towards the ends, so that these stay where they are. */
function boxed(values: readonly number[], closed: boolean): number[] {
  const count = values.length;
  return values.map((_, i) => {
    const room = closed ? (count - 1) >> 1 : Math.min(i, count - 1 - i);
    const reach = Math.min(boxHalf, room);
    let sum = 0;
    for (let k = i - reach; k <= i + reach; k++) sum += values[(k + count) % count] as number;
    return sum / (2 * reach + 1);
  });
}

/**
 * A line that a pencil can follow: stairs and hair taken off, few points. mm in, mm out. A line whose
 * ends meet is closed and stays so.
 */
export function smoothLine(points: readonly Point[]): Point[] {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last || points.length < 2) return [...points];
  const closed = points.length > 3 && first[0] === last[0] && first[1] === last[1];
  const even = evenly(points);
  if (closed) even.pop();
  let x = even.map((point) => point[0]);
  let y = even.map((point) => point[1]);
  for (let pass = 0; pass < 2; pass++) [x, y] = [boxed(x, closed), boxed(y, closed)];
  if (closed) {
    x.push(x[0] as number);
    y.push(y[0] as number);
  }
  if (!closed) return simplifyLine(x, y, withinMm).map((i): Point => [x[i] ?? 0, y[i] ?? 0]);
  // A closed line has no straight piece from its first to its last point: it is straightened in halves.
  const half = x.length >> 1;
  const front = simplifyLine(x.slice(0, half + 1), y.slice(0, half + 1), withinMm);
  const back = simplifyLine(x.slice(half), y.slice(half), withinMm).slice(1);
  return [...front, ...back.map((i) => i + half)].map((i): Point => [x[i] ?? 0, y[i] ?? 0]);
}

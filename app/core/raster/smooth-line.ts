import type { Point } from '../colour/lab.ts';
import type { TracedLine } from './trace-outlines.ts';

// Straightening of a line of many points (Ramer, 'An Iterative Procedure for the Polygonal
// Approximation of Plane Curves', 1972; Douglas, Peucker 1973).

/** Square of the way from point i to the straight piece from point a to point b. */
function awayFrom(x: ArrayLike<number>, y: ArrayLike<number>, a: number, b: number, i: number) {
  const [ax, ay] = [x[a], y[a]];
  const [dx, dy] = [x[b] - ax, y[b] - ay];
  const [px, py] = [x[i] - ax, y[i] - ay];
  const all = dx * dx + dy * dy;
  const along = all === 0 ? 0 : Math.min(1, Math.max(0, (px * dx + py * dy) / all));
  return (px - along * dx) ** 2 + (py - along * dy) ** 2;
}

/** Indices of the points to keep so that none of the others is further than `within` from the line. */
export function simplifyLine(x: ArrayLike<number>, y: ArrayLike<number>, within: number): number[] {
  const count = x.length;
  if (count < 3) return Array.from({ length: count }, (_, i) => i);
  const kept = new Uint8Array(count);
  kept[0] = kept[count - 1] = 1;
  const waiting: (readonly [number, number])[] = [[0, count - 1]];
  for (let piece = waiting.pop(); piece; piece = waiting.pop()) {
    const [from, to] = piece;
    let most = within * within;
    let farthest = -1;
    for (let i = from + 1; i < to; i++) {
      const away = awayFrom(x, y, from, to, i);
      if (away <= most) continue;
      most = away;
      farthest = i;
    }
    if (farthest === -1) continue;
    kept[farthest] = 1;
    waiting.push([from, farthest], [farthest, to]);
  }
  return Array.from({ length: count }, (_, i) => i).filter((i) => kept[i] === 1);
}

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
    for (let k = i - reach; k <= i + reach; k++) sum += values[(k + count) % count];
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
    x.push(x[0]);
    y.push(y[0]);
  }
  if (!closed) return simplifyLine(x, y, withinMm).map((i): Point => [x[i] ?? 0, y[i] ?? 0]);
  // A closed line has no straight piece from its first to its last point: it is straightened in halves.
  const half = x.length >> 1;
  const front = simplifyLine(x.slice(0, half + 1), y.slice(0, half + 1), withinMm);
  const back = simplifyLine(x.slice(half), y.slice(half), withinMm).slice(1);
  return [...front, ...back.map((i) => i + half)].map((i): Point => [x[i] ?? 0, y[i] ?? 0]);
}

/** Places along a line, evenly far apart; x and y by turns, px. */
export interface EvenPlaces {
  readonly places: Float32Array;
  readonly closed: boolean;
  readonly stepPx: number;
}

/** Means over `reach` places to either side, so that the pixels' stairs go; open ends stay put. */
function smoothed({ places, closed }: TracedLine, reach: number): Float32Array {
  // A closed line repeats its first place at its end.
  const count = places.length / 2 - (closed ? 1 : 0);
  const out = new Float32Array(2 * count);
  for (let i = 0; i < count; i++) {
    const side = closed ? Math.min(reach, (count - 1) >> 1) : Math.min(reach, i, count - 1 - i);
    let [x, y] = [0, 0];
    for (let n = i - side; n <= i + side; n++) {
      const at = (n + count) % count;
      x += places[2 * at];
      y += places[2 * at + 1];
    }
    out[2 * i] = x / (2 * side + 1);
    out[2 * i + 1] = y / (2 * side + 1);
  }
  return out;
}

/** A traced line without its stairs, in steps of about `stepPx` (at least two of them). */
export function resampleLine(line: TracedLine, stepPx: number): EvenPlaces {
  const smooth = smoothed(line, Math.max(2, Math.round(stepPx / 2)));
  const count = smooth.length / 2;
  const last = line.closed ? count : count - 1;
  const lengths = new Float32Array(last + 1);
  for (let i = 0; i < last; i++) {
    const next = (i + 1) % count;
    const dx = smooth[2 * next] - smooth[2 * i];
    const dy = smooth[2 * next + 1] - smooth[2 * i + 1];
    lengths[i + 1] = lengths[i] + Math.hypot(dx, dy);
  }
  const whole = lengths[last];
  const steps = Math.max(2, Math.round(whole / stepPx));
  const wanted = line.closed ? steps : steps + 1;
  const places = new Float32Array(2 * wanted);
  let before = 0;
  for (let n = 0; n < wanted; n++) {
    const way = (whole * n) / steps;
    while (before < last - 1 && lengths[before + 1] < way) before++;
    const next = (before + 1) % count;
    const from = lengths[before];
    const gap = lengths[before + 1] - from;
    const t = gap > 0 ? Math.min(1, (way - from) / gap) : 0;
    for (const axis of [0, 1]) {
      const here = smooth[2 * before + axis];
      places[2 * n + axis] = here + t * (smooth[2 * next + axis] - here);
    }
  }
  return { places, closed: line.closed, stepPx: whole / steps };
}

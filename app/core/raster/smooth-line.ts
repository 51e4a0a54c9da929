import type { Point } from '../colour/lab.ts';
import { boxMeans } from '../numeric/filter-series.ts';
import type { Contour } from './trace-contours.ts';
import type { TracedLine } from './trace-outlines.ts';

// Straightening of a line of many points (Ramer, 'An Iterative Procedure for the Polygonal
// Approximation of Plane Curves', 1972; Douglas, Peucker 1973).

/** The point between two of a line that is farthest from the straight piece between them; -1 where none is beyond `within`. */
function farthestFrom(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  from: number,
  to: number,
  within: number,
): number {
  const ax = x[from];
  const ay = y[from];
  const dx = x[to] - ax;
  const dy = y[to] - ay;
  const all = dx * dx + dy * dy;
  let most = within * within;
  let farthest = -1;
  for (let i = from + 1; i < to; i++) {
    const px = x[i] - ax;
    const py = y[i] - ay;
    const along = all === 0 ? 0 : Math.min(1, Math.max(0, (px * dx + py * dy) / all));
    const away = (px - along * dx) ** 2 + (py - along * dy) ** 2;
    if (away <= most) continue;
    most = away;
    farthest = i;
  }
  return farthest;
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
    const farthest = farthestFrom(x, y, from, to, within);
    if (farthest === -1) continue;
    kept[farthest] = 1;
    waiting.push([from, farthest], [farthest, to]);
  }
  return Array.from({ length: count }, (_, i) => i).filter((i) => kept[i] === 1);
}

/** Places are set this far apart before smoothing, mm. */
const stepMm = 0.4;
/** Half the width of the box that takes out what a pencil can't follow, places; applied twice. */
const boxHalf = 2;
/** The line drawn stays this near to the smoothed one, mm: under the width of a pencil's line. */
const withinMm = 0.08;

/** Places at about even distances along a line; all its points are kept. */
function spaceEvenly(points: readonly Point[]): Point[] {
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

/**
 * A line that a pencil can follow: without stairs and fine hair, of few points. mm in, mm out. A line
 * whose ends meet is closed and stays so.
 */
export function smoothLine(points: readonly Point[]): Point[] {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last || points.length < 2) return [...points];
  const closed = points.length > 3 && first[0] === last[0] && first[1] === last[1];
  const even = spaceEvenly(points);
  if (closed) even.pop();
  const [x, y] = ([0, 1] as const).map((axis) => {
    const values = Float64Array.from(even, (point) => point[axis]);
    const once = boxMeans(values, boxHalf, closed, new Float64Array(even.length));
    return boxMeans(once, boxHalf, closed, new Float64Array(even.length));
  });
  const kept = closed ? simplifyClosed(x, y) : simplifyLine(x, y, withinMm);
  return kept.map((i): Point => [x[i % x.length], y[i % y.length]]);
}

/** A closed line has no straight piece from its first to its last point, so each half is straightened. */
function simplifyClosed(x: Float64Array, y: Float64Array): number[] {
  const half = (x.length + 1) >> 1;
  const front = simplifyLine(x.subarray(0, half + 1), y.subarray(0, half + 1), withinMm);
  const back = simplifyLine([...x.subarray(half), x[0]], [...y.subarray(half), y[0]], withinMm);
  return [...front, ...back.slice(1).map((i) => i + half)];
}

/** Places along a line at even distances; x and y by turns, px. */
export interface EvenPlaces {
  readonly places: Float32Array;
  readonly closed: boolean;
  readonly stepPx: number;
}

/** A traced line without the stairs of its pixels, in steps of about `stepPx`, two of them at least. */
export function resampleLine({ places, closed }: TracedLine, stepPx: number): EvenPlaces {
  // A closed line repeats its first place at its end.
  const count = places.length / 2 - (closed ? 1 : 0);
  const reach = Math.max(2, Math.round(stepPx / 2));
  const [x, y] = [0, 1].map((axis) => {
    const values = Float32Array.from({ length: count }, (_, i) => places[2 * i + axis]);
    return boxMeans(values, reach, closed, new Float32Array(count));
  });
  const last = closed ? count : count - 1;
  const lengths = new Float32Array(last + 1);
  for (let i = 0; i < last; i++) {
    const next = (i + 1) % count;
    lengths[i + 1] = lengths[i] + Math.hypot(x[next] - x[i], y[next] - y[i]);
  }
  const whole = lengths[last];
  const steps = Math.max(2, Math.round(whole / stepPx));
  const wanted = closed ? steps : steps + 1;
  const even = new Float32Array(2 * wanted);
  let before = 0;
  for (let n = 0; n < wanted; n++) {
    const length = (whole * n) / steps;
    while (before < last - 1 && lengths[before + 1] < length) before++;
    const next = (before + 1) % count;
    const from = lengths[before];
    const gap = lengths[before + 1] - from;
    const part = gap > 0 ? Math.min(1, (length - from) / gap) : 0;
    even[2 * n] = x[before] + part * (x[next] - x[before]);
    even[2 * n + 1] = y[before] + part * (y[next] - y[before]);
  }
  return { places: even, closed, stepPx: whole / steps };
}

/**
 * A contour as a smooth line with one place per pixel side, in px from the picture's upper left. Normals
 * are unit vectors that point from slot a to slot b; `steps` is the length that each place stands for, px.
 */
export interface ContourLine {
  readonly count: number;
  readonly closed: boolean;
  readonly x: Float32Array;
  readonly y: Float32Array;
  readonly normalX: Float32Array;
  readonly normalY: Float32Array;
  readonly steps: Float32Array;
}

/** Half the width of the box that takes the stairs of the pixels off a contour, places; applied twice. */
const placeBox = 2;
/** The same for the contour's direction. */
const directionBox = 4;

function smoothTwice(values: Float32Array, half: number, closed: boolean): Float32Array {
  const once = boxMeans(values, half, closed, new Float32Array(values.length));
  return boxMeans(once, half, closed, new Float32Array(values.length));
}

/** Middles of the pixel sides of a contour. */
function middles({ corners, closed }: Contour): { x: Float32Array; y: Float32Array } {
  const cornerCount = corners.length / 2;
  const count = closed ? cornerCount : cornerCount - 1;
  const x = new Float32Array(count);
  const y = new Float32Array(count);
  for (let i = 0; i < count; i++) {
    const next = (i + 1) % cornerCount;
    x[i] = (corners[2 * i] + corners[2 * next]) / 2;
    y[i] = (corners[2 * i + 1] + corners[2 * next + 1]) / 2;
  }
  return { x, y };
}

/** Takes the stairs off a contour and finds its direction. */
export function contourLine(contour: Contour): ContourLine {
  const { closed } = contour;
  const middle = middles(contour);
  const x = smoothTwice(middle.x, placeBox, closed);
  const y = smoothTwice(middle.y, placeBox, closed);
  const alongX = smoothTwice(middle.x, directionBox, closed);
  const alongY = smoothTwice(middle.y, directionBox, closed);
  const count = x.length;
  const normalX = new Float32Array(count);
  const normalY = new Float32Array(count);
  const steps = new Float32Array(count);
  for (let i = 0; i < count; i++) {
    const before = i > 0 ? i - 1 : closed ? count - 1 : 0;
    const after = i < count - 1 ? i + 1 : closed ? 0 : i;
    let dx = alongX[after] - alongX[before];
    let dy = alongY[after] - alongY[before];
    if (dx === 0 && dy === 0) {
      // A single side, or a loop round one pixel: the side's own direction.
      const { corners } = contour;
      dx = corners[(2 * i + 2) % corners.length] - corners[2 * i];
      dy = corners[(2 * i + 3) % corners.length] - corners[2 * i + 1];
    }
    const length = Math.sqrt(dx * dx + dy * dy) || 1; // several times as quick as Math.hypot
    normalX[i] = -dy / length;
    normalY[i] = dx / length;
    const wayX = x[after] - x[before];
    const wayY = y[after] - y[before];
    const way = Math.sqrt(wayX * wayX + wayY * wayY);
    // An open end stands for half a pixel side and half the length to its neighbour.
    const isEnd = before === i || after === i;
    steps[i] = isEnd ? (count === 1 ? 1 : way / 2 + 0.5) : way / 2;
  }
  return { count, closed, x, y, normalX, normalY, steps };
}

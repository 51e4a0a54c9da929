import type { Contour } from './trace-contours.ts';

/**
 * A contour as a smooth line, one place per pixel side: in px from the picture's upper left. Normals
 * are unit vectors pointing from slot a to slot b; `steps` is the way that each place stands for, px.
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

/** Half the length of the box that takes the stairs off a contour, places; it is applied twice. */
const placeBox = 2;
/** The same for its direction. */
const directionBox = 4;

/** Work space, kept: a picture has some ten thousand contours, most of them short. */
let sums = new Float64Array(1024);
let between = new Float32Array(1024);

/** One pass of a box that shrinks evenly towards open ends, so that these stay where they are. */
function boxPass(
  values: Float32Array,
  count: number,
  half: number,
  closed: boolean,
  smooth: Float32Array,
): void {
  sums[0] = 0;
  for (let i = 0; i < count; i++) sums[i + 1] = sums[i] + values[i];
  const all = sums[count];
  for (let i = 0; i < count; i++) {
    const room = closed ? (count - 1) >> 1 : Math.min(i, count - 1 - i);
    const reach = Math.min(half, room);
    const from = i - reach;
    const to = i + reach + 1;
    let sum = sums[Math.min(to, count)] - sums[Math.max(from, 0)];
    if (from < 0) sum += all - sums[count + from];
    if (to > count) sum += sums[to - count];
    smooth[i] = sum / (to - from);
  }
}

function twice(values: Float32Array, half: number, closed: boolean): Float32Array {
  const count = values.length;
  if (between.length <= count) {
    sums = new Float64Array(2 * count + 1);
    between = new Float32Array(2 * count + 1);
  }
  const smooth = new Float32Array(count);
  boxPass(values, count, half, closed, between);
  boxPass(between, count, half, closed, smooth);
  return smooth;
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
  const x = twice(middle.x, placeBox, closed);
  const y = twice(middle.y, placeBox, closed);
  const alongX = twice(middle.x, directionBox, closed);
  const alongY = twice(middle.y, directionBox, closed);
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
    const length = Math.hypot(dx, dy) || 1;
    normalX[i] = -dy / length;
    normalY[i] = dx / length;
    const way = Math.hypot(x[after] - x[before], y[after] - y[before]);
    // An open end stands for half a side more than its half way to the next.
    const isEnd = before === i || after === i;
    steps[i] = isEnd ? (count === 1 ? 1 : way / 2 + 0.5) : way / 2;
  }
  return { count, closed, x, y, normalX, normalY, steps };
}

import { boxMeans } from '../numeric/filter-series.ts';
import type { Contour } from './trace-contours.ts';

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
    const length = Math.hypot(dx, dy) || 1;
    normalX[i] = -dy / length;
    normalY[i] = dx / length;
    const way = Math.hypot(x[after] - x[before], y[after] - y[before]);
    // An open end stands for half a pixel side and half the length to its neighbour.
    const isEnd = before === i || after === i;
    steps[i] = isEnd ? (count === 1 ? 1 : way / 2 + 0.5) : way / 2;
  }
  return { count, closed, x, y, normalX, normalY, steps };
}

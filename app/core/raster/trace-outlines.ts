import { runToEnd } from '../numeric/run-to-end.ts';
import type { PixelSize } from './size.ts';
import { traceContours } from './trace-contours.ts';

/** One unbroken stretch of the line between subject and ground, from corner to corner of pixels. */
export interface TracedLine {
  /** x and y by turns, px; the subject lies to the right of the direction. A closed line ends where it began. */
  readonly places: Float32Array;
  readonly closed: boolean;
}

/** Index of the uppermost of a contour's corners, of several the leftmost; of those `begins` allows. */
function firstCorner(corners: Int32Array, begins: (i: number) => boolean): number {
  let first = -1;
  for (let i = 0; i < corners.length; i += 2) {
    if (!begins(i)) continue;
    const down = first < 0 ? -1 : corners[i + 1] - corners[first + 1];
    if (down < 0 || (down === 0 && corners[i] < corners[first])) first = i;
  }
  return first;
}

/**
 * The lines along which 1 meets 0 in a mask; the picture's own border is none. Those that end at the
 * border come first, then the closed ones, as the picture is read.
 */
export function traceLine(mask: Uint8Array, size: PixelSize): TracedLine[] {
  const found = runToEnd(traceContours(mask, size)).map(({ corners, closed }) => {
    const start = closed ? firstCorner(corners, () => true) : 0;
    const places = new Float32Array(corners.length + (closed ? 2 : 0));
    for (let i = 0; i < places.length; i++) places[i] = corners[(start + i) % corners.length];
    return { places, closed };
  });
  // Where two lines begin at one corner, the one that leaves it to the right or downwards comes first.
  const way = ({ places: [x, y, nextX, nextY] }: TracedLine): number =>
    nextX > x ? 0 : nextY > y ? 1 : nextX < x ? 2 : 3;
  return found.sort(
    (one, other) =>
      Number(one.closed) - Number(other.closed) ||
      one.places[1] - other.places[1] ||
      one.places[0] - other.places[0] ||
      way(one) - way(other),
  );
}

/** One closed line round a white, or round what lies within it. */
export interface WhiteOutline {
  /** Index of the white. */
  readonly white: number;
  /** x, y, x, y ... in px, through the middles of pixel sides; the white lies to the right. */
  readonly points: readonly number[];
}

/** The outlines of every white of a map as `whiteMap` makes it: whites never share a pixel side. */
export function whiteOutlines(map: Uint16Array, { width, height }: PixelSize): WhiteOutline[] {
  // A rim of painted pixels closes the outlines of whites at the picture's border.
  const wide = width + 2;
  const mask = new Uint8Array(wide * (height + 2));
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) if (map[i] !== 0) mask[(y + 1) * wide + x + 1] = 1;
  }
  const contours = runToEnd(traceContours(mask, { width: wide, height: height + 2 }));
  const outlines = contours.map(({ corners }) => {
    const count = corners.length;
    // Every outline begins above its white: the uppermost side that runs to the right.
    const start = firstCorner(corners, (i) => corners[(i + 2) % count] > corners[i]);
    const points: number[] = [];
    for (let n = 0; n < count; n += 2) {
      const [i, next] = [(start + n) % count, (start + n + 2) % count];
      points.push(
        (corners[i] + corners[next]) / 2 - 1,
        (corners[i + 1] + corners[next + 1]) / 2 - 1,
      );
    }
    return { white: map[(corners[start + 1] - 1) * width + corners[start] - 1] - 1, points };
  });
  return outlines.sort(
    ({ points: one }, { points: other }) => one[1] - other[1] || one[0] - other[0],
  );
}

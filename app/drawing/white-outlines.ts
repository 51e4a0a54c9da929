import type { PixelSize } from '../model/pixel-size.ts';

/** One closed line round a white, or round what lies within it. */
export interface WhiteOutline {
  /** Index of the white. */
  readonly white: number;
  /** x, y, x, y ... in px, through the middles of pixel sides. */
  readonly points: readonly number[];
}

/** East, south, west, north; the white lies to the right of the way. */
const steps = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const;

/** From a corner to the pixel ahead on the right, for each way; the one on the left is the next in turn. */
const ahead = [
  [0, 0],
  [-1, 0],
  [-1, -1],
  [0, -1],
] as const;

/** The outlines of every white of a map as `whiteMap` makes it. */
export function whiteOutlines(map: Uint16Array, { width, height }: PixelSize): WhiteOutline[] {
  const at = (x: number, y: number): number =>
    x < 0 || y < 0 || x >= width || y >= height ? 0 : (map[y * width + x] as number);
  /** Pixels along whose upper side a line has gone. */
  const gone = new Uint8Array(map.length);
  const outlines: WhiteOutline[] = [];

  function follow(label: number, startX: number, startY: number): number[] {
    const points: number[] = [];
    let [x, y, way] = [startX, startY, 0];
    do {
      if (way === 0) gone[y * width + x] = 1;
      const [dx, dy] = steps[way] as (typeof steps)[number];
      points.push(x + dx / 2, y + dy / 2);
      x += dx;
      y += dy;
      const [rightX, rightY] = ahead[way] as (typeof ahead)[number];
      const [leftX, leftY] = ahead[(way + 3) % 4] as (typeof ahead)[number];
      if (at(x + rightX, y + rightY) !== label) way = (way + 1) % 4;
      else if (at(x + leftX, y + leftY) === label) way = (way + 3) % 4;
    } while (x !== startX || y !== startY || way !== 0);
    return points;
  }

  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const label = map[i] as number;
      if (label === 0 || gone[i] === 1 || at(x, y - 1) === label) continue;
      outlines.push({ white: label - 1, points: follow(label, x, y) });
    }
  }
  return outlines;
}

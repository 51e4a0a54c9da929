import type { PixelSize } from './size.ts';

/** One run of the line between subject and ground, in px; corner to corner of pixels. */
export interface TracedLine {
  /** x and y by turns; the subject lies to the right as it runs. */
  readonly places: Float32Array;
  /** True where the end meets the start. */
  readonly closed: boolean;
}

/** Steps right, down, left, up. */
const ways = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const;

class Tracing {
  readonly #mask: Uint8Array;
  readonly #size: PixelSize;
  /** Per corner of a pixel, bits of the ways by which a line leaves it and still has to be walked. */
  readonly #leaving: Uint8Array;
  readonly #arriving: Uint8Array;

  constructor(mask: Uint8Array, size: PixelSize) {
    this.#mask = mask;
    this.#size = size;
    const corners = (size.width + 1) * (size.height + 1);
    this.#leaving = new Uint8Array(corners);
    this.#arriving = new Uint8Array(corners);
    this.#mark();
  }

  #mark(): void {
    const { width, height } = this.#size;
    const across = width + 1;
    const side = (from: number, to: number, way: number): void => {
      this.#leaving[from] = this.#leaving[from] | (1 << way);
      this.#arriving[to] = this.#arriving[to] | (1 << way);
    };
    for (let y = 0, i = 0; y < height; y++) {
      for (let x = 0; x < width; x++, i++) {
        const own = this.#mask[i];
        const corner = y * across + x;
        if (x + 1 < width && own !== this.#mask[i + 1]) {
          const top = corner + 1;
          if (own === 1) side(top, top + across, 1);
          else side(top + across, top, 3);
        }
        if (y + 1 < height && own !== this.#mask[i + width]) {
          const left = corner + across;
          if (own === 1) side(left + 1, left, 2);
          else side(left, left + 1, 0);
        }
      }
    }
  }

  /** Where two lines touch at a corner, the one that turns towards the subject is kept to. */
  #next(corner: number, way: number): number {
    const open = this.#leaving[corner];
    for (const turn of [1, 0, 3]) {
      const next = (way + turn) & 3;
      if (open & (1 << next)) return next;
    }
    return -1;
  }

  #walk(start: number): TracedLine {
    const across = this.#size.width + 1;
    const places: number[] = [];
    let corner = start;
    let way = Math.log2(this.#leaving[start] & -this.#leaving[start]);
    while (way >= 0) {
      places.push(corner % across, Math.floor(corner / across));
      this.#leaving[corner] = this.#leaving[corner] & ~(1 << way);
      const [dx, dy] = ways[way] as readonly [number, number];
      corner += dy * across + dx;
      way = this.#next(corner, way);
    }
    places.push(corner % across, Math.floor(corner / across));
    return { places: Float32Array.from(places), closed: corner === start };
  }

  lines(): TracedLine[] {
    const found: TracedLine[] = [];
    const walkFrom = (begins: (corner: number) => boolean): void => {
      for (let corner = 0; corner < this.#leaving.length; corner++) {
        while (this.#leaving[corner] !== 0 && begins(corner)) found.push(this.#walk(corner));
      }
    };
    walkFrom((corner) => this.#arriving[corner] === 0); // runs out of the picture's border
    walkFrom(() => true);
    return found;
  }
}

/**
 * The lines along which 1 meets 0 in a mask, the picture's own border left out. Starts at the
 * border first, then closed ones, as the picture is read.
 */
export const traceLine = (mask: Uint8Array, size: PixelSize): TracedLine[] =>
  new Tracing(mask, size).lines();

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
    x < 0 || y < 0 || x >= width || y >= height ? 0 : map[y * width + x];
  /** Pixels along whose upper side a line has gone. */
  const gone = new Uint8Array(map.length);
  const outlines: WhiteOutline[] = [];

  function follow(label: number, startX: number, startY: number): number[] {
    const points: number[] = [];
    let [x, y, way] = [startX, startY, 0];
    do {
      if (way === 0) gone[y * width + x] = 1;
      const [dx, dy] = steps[way];
      points.push(x + dx / 2, y + dy / 2);
      x += dx;
      y += dy;
      const [rightX, rightY] = ahead[way];
      const [leftX, leftY] = ahead[(way + 3) % 4];
      if (at(x + rightX, y + rightY) !== label) way = (way + 1) % 4;
      else if (at(x + leftX, y + leftY) === label) way = (way + 3) % 4;
    } while (x !== startX || y !== startY || way !== 0);
    return points;
  }

  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const label = map[i];
      if (label === 0 || gone[i] === 1 || at(x, y - 1) === label) continue;
      outlines.push({ white: label - 1, points: follow(label, x, y) });
    }
  }
  return outlines;
}

import type { PixelSize } from '../../../app/model/pixel-size.ts';

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
      this.#leaving[from] = (this.#leaving[from] as number) | (1 << way);
      this.#arriving[to] = (this.#arriving[to] as number) | (1 << way);
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
    const open = this.#leaving[corner] as number;
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
    let way = Math.log2((this.#leaving[start] as number) & -(this.#leaving[start] as number));
    while (way >= 0) {
      places.push(corner % across, Math.floor(corner / across));
      this.#leaving[corner] = (this.#leaving[corner] as number) & ~(1 << way);
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

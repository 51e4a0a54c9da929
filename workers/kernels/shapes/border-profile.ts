// One look across a border: lightness along its normal, read as side values and width.
import type { PixelSize } from '../../../app/model/reference.ts';

/** What one look across a border found. Units: L* and px. */
export interface BorderLook {
  /** Difference of the two sides, L*, 0 or more. */
  contrast: number;
  /** Way from 10 % to 90 % of that difference, px. */
  widthPx: number;
}

/** Middle value of the first `count` numbers; they are put in order. */
function median(values: Float32Array, count: number): number {
  const sorted = values.subarray(0, count).sort();
  return count % 2
    ? (sorted[count >> 1] as number)
    : ((sorted[count / 2 - 1] as number) + (sorted[count / 2] as number)) / 2;
}

/** Looks across borders of one picture; work space is kept between looks. */
export class BorderLooks {
  readonly #lightness: Float32Array;
  readonly #slots: Uint8Array;
  readonly #size: PixelSize;
  readonly #reach: number;
  /** Lightness along the normal, the border between places reach - 1 and reach. */
  readonly #line: Float32Array;
  readonly #side: Float32Array;
  readonly #found: BorderLook = { contrast: 0, widthPx: 0 };

  /** reachPx: how far to look to either side at most. */
  constructor(lightness: Float32Array, slots: Uint8Array, size: PixelSize, reachPx: number) {
    this.#lightness = lightness;
    this.#slots = slots;
    this.#size = size;
    this.#reach = Math.max(2, reachPx);
    this.#line = new Float32Array(2 * this.#reach);
    this.#side = new Float32Array(this.#reach);
  }

  /**
   * Looks from the middle of the side between two neighbouring pixels, `dx`, `dy` being the unit
   * normal from one to the other. The object returned is used again by the next look.
   */
  across(x: number, y: number, dx: number, dy: number): BorderLook {
    const here = this.#walk(x, y, -dx, -dy, -1);
    const there = this.#walk(x, y, dx, dy, 1);
    const low = this.#sideValue(here, -1);
    const high = this.#sideValue(there, 1);
    const found = this.#found;
    found.contrast = Math.abs(high - low);
    found.widthPx = found.contrast < 0.5 ? 0 : this.#width(low, high, here, there);
    return found;
  }

  /** Fills one half of the line while it stays in one slot; answers how many places that was. */
  #walk(x: number, y: number, dx: number, dy: number, way: -1 | 1): number {
    const { width, height } = this.#size;
    const start = way < 0 ? this.#reach - 1 : this.#reach;
    let slot = -1;
    let count = 0;
    for (; count < this.#reach; count++) {
      const px = x + dx * (count + 0.5);
      const py = y + dy * (count + 0.5);
      const column = Math.round(px);
      const row = Math.round(py);
      if (column < 0 || row < 0 || column >= width || row >= height) break;
      const now = this.#slots[row * width + column] as number;
      if (slot === -1) slot = now;
      if (now !== slot) break;
      this.#line[start + way * count] = this.#at(px, py);
    }
    return count;
  }

  /** Lightness between four pixels. */
  #at(px: number, py: number): number {
    const { width, height } = this.#size;
    const column = Math.min(width - 1, Math.max(0, Math.floor(px)));
    const row = Math.min(height - 1, Math.max(0, Math.floor(py)));
    const right = column < width - 1 ? 1 : 0;
    const below = row < height - 1 ? width : 0;
    const u = Math.min(1, Math.max(0, px - column));
    const v = Math.min(1, Math.max(0, py - row));
    const plane = this.#lightness;
    const i = row * width + column;
    const top = (plane[i] as number) * (1 - u) + (plane[i + right] as number) * u;
    const low = (plane[i + below] as number) * (1 - u) + (plane[i + below + right] as number) * u;
    return top * (1 - v) + low * v;
  }

  /** Median of the outer half of what was walked, so that a soft border does not pull at it. */
  #sideValue(count: number, way: -1 | 1): number {
    const start = way < 0 ? this.#reach - 1 : this.#reach;
    const from = Math.floor(count / 2);
    for (let i = from; i < count; i++) this.#side[i - from] = this.#line[start + way * i] as number;
    return count === 0 ? 0 : median(this.#side, count - from);
  }

  #width(low: number, high: number, here: number, there: number): number {
    const first = this.#reach - here;
    const last = this.#reach + there - 1;
    const share = (i: number): number => ((this.#line[i] as number) - low) / (high - low);
    // From the border outwards to where the rise is done, on either side.
    let left = this.#reach - 1;
    while (left > first && share(left) > 0.1) left--;
    let right = this.#reach;
    while (right < last && share(right) < 0.9) right++;
    const place = (i: number, level: number, inner: number): number => {
      const step = share(inner) - share(i);
      return step === 0 ? i : i + ((level - share(i)) / step) * (inner - i);
    };
    const start = left < this.#reach ? place(left, 0.1, left + 1) : left;
    const end = place(right, 0.9, right - 1);
    return Math.max(0, end - start);
  }
}

import { type Lab, rgbOfLab, tableOf } from '../../colour/lab.ts';
import { spectrumSize, writeLab } from '../../colour/spectrum.ts';
import { drySurface } from '../../colour/surface.ts';
import { defaultPaperLab } from '../../paint/colour-of-washes.ts';
import type { ColourSquares } from '../../reading/colour-squares.ts';

/** Dry colours of the rows of some squares: bare paper at first, then looked at where something was laid. */
export class RowColours {
  readonly #squares: ColourSquares;
  readonly #slotCount: number;
  /** As they were looked at last: L*, a*, b*, and sRGB bytes, 3 a row. */
  readonly #labs: Float64Array;
  readonly #table: Uint8ClampedArray;
  /** 1 for every row that was laid on since. */
  readonly #changed: Uint8Array;

  constructor(squares: ColourSquares, slotCount: number) {
    this.#squares = squares;
    this.#slotCount = slotCount;
    const rows = squares.slots.length;
    this.#changed = new Uint8Array(rows);
    const bytes = tableOf([defaultPaperLab]);
    this.#labs = new Float64Array(3 * rows);
    this.#table = new Uint8ClampedArray(3 * rows);
    for (let i = 0; i < 3 * rows; i++) {
      this.#labs[i] = defaultPaperLab[i % 3];
      this.#table[i] = bytes[i % 3];
    }
  }

  /** Something was laid on a row. */
  change(row: number): void {
    this.#changed[row] = 1;
  }

  /**
   * Of every slot the mean over its rows by their shares; null where it has none. `light`: 36 samples a row, inside the
   * surface.
   */
  slotMeans(light: Float64Array): (Lab | null)[] {
    const { slots, shares } = this.#squares;
    const labs = this.#labs;
    for (let row = 0; row < slots.length; row++) {
      if (this.#changed[row] === 0) continue;
      const own = light.subarray(row * spectrumSize, (row + 1) * spectrumSize);
      writeLab(own, drySurface, labs, 3 * row);
      this.#table.set(rgbOfLab([labs[3 * row], labs[3 * row + 1], labs[3 * row + 2]]), 3 * row);
    }
    this.#changed.fill(0);
    const sums = Array.from({ length: this.#slotCount }, () => [0, 0, 0, 0]);
    for (let row = 0; row < slots.length; row++) {
      const sum = sums[slots[row]];
      if (!sum) continue;
      for (let c = 0; c < 3; c++) sum[c] = sum[c] + shares[row] * labs[3 * row + c];
      sum[3] = sum[3] + shares[row];
    }
    return sums.map(([l, a, b, share]) => (share > 0 ? [l / share, a / share, b / share] : null));
  }

  /** sRGB bytes of every row as they were looked at last, 3 each: a copy. */
  table(): Uint8ClampedArray {
    return this.#table.slice();
  }
}

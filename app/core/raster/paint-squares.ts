import type { SoftBlend } from './paint-slots.ts';
import type { PixelSize } from './size.ts';

/** Where colours of slots stand that run over the sheet: one row for every slot and square it is in. */
export interface SquareGrid {
  readonly across: number;
  readonly down: number;
  /** Side of a square, px. */
  readonly sidePx: number;
  readonly slots: readonly number[];
  readonly squares: readonly number[];
}

/** The same squares on the picture made smaller. */
export const scaledGrid = (grid: SquareGrid, scale: number): SquareGrid => ({
  ...grid,
  sidePx: grid.sidePx * scale,
});

/** A soft edge carries a colour no further than so many squares out of its slot. */
const carriedSquares = 2;

/**
 * Row of every slot and square, slot by slot: its own, else that of a square near by, for soft edges; -1 further off. It
 * ends with the last slot that has a square.
 */
function rowsBySquare({ across, down, slots, squares }: SquareGrid): Int32Array {
  const count = across * down;
  const most = slots.reduce((one, other) => Math.max(one, other), -1);
  const rows = new Int32Array((most + 1) * count).fill(-1);
  for (let row = 0; row < slots.length; row++) rows[slots[row] * count + squares[row]] = row;
  for (const slot of new Set(slots)) {
    const own = rows.subarray(slot * count, (slot + 1) * count);
    for (let round = 0; round < carriedSquares; round++) spread(own, across, down);
  }
  return rows;
}

/** Gives every square without a row that of one beside it. */
function spread(rows: Int32Array, across: number, down: number): void {
  const before = Int32Array.from(rows);
  for (let y = 0; y < down; y++) {
    for (let x = 0; x < across; x++) {
      const square = y * across + x;
      if (before[square] >= 0) continue;
      if (x > 0) rows[square] = Math.max(rows[square], before[square - 1]);
      if (x < across - 1) rows[square] = Math.max(rows[square], before[square + 1]);
      if (y > 0) rows[square] = Math.max(rows[square], before[square - across]);
      if (y < down - 1) rows[square] = Math.max(rows[square], before[square + across]);
    }
  }
}

/** The two squares a pixel lies between, along one side, and how far towards the second, 0..1. */
function betweenSquares(px: number, sidePx: number, count: number) {
  const first = new Int32Array(px);
  const second = new Int32Array(px);
  const part = new Float64Array(px);
  for (let i = 0; i < px; i++) {
    const place = (i + 0.5) / sidePx - 0.5;
    const below = Math.floor(place);
    first[i] = Math.min(count - 1, Math.max(0, below));
    second[i] = Math.min(count - 1, Math.max(0, below + 1));
    part[i] = place - below;
  }
  return { first, second, part };
}

/** Colours of slots at any pixel: between the middles of its squares a colour goes over from one to the next. */
class SquareColours {
  readonly #rows: Int32Array;
  readonly #table: Uint8ClampedArray;
  readonly #grid: SquareGrid;
  readonly #over: ReturnType<typeof betweenSquares>;
  readonly #along: ReturnType<typeof betweenSquares>;
  /** What the colours to the left and the right are between, which holds for all pixels of a slot there in one row. */
  readonly #left = new Float64Array(3);
  readonly #right = new Float64Array(3);
  #leftWeight = 0;
  #rightWeight = 0;
  /** Red, green, blue, 0..255, of the pixel looked at. */
  readonly rgb = new Float64Array(3);

  constructor(grid: SquareGrid, table: Uint8ClampedArray, { width, height }: PixelSize) {
    this.#grid = grid;
    this.#table = table;
    this.#rows = rowsBySquare(grid);
    this.#over = betweenSquares(width, grid.sidePx, grid.across);
    this.#along = betweenSquares(height, grid.sidePx, grid.down);
  }

  /** Writes the sum of the colours of a slot above and below in a column of squares; one it is not in weighs nothing. */
  #between(slot: number, column: number, y: number, out: Float64Array): number {
    const { across, down } = this.#grid;
    const { first, second, part } = this.#along;
    const table = this.#table;
    const above = this.#rows[(slot * down + first[y]) * across + column] ?? -1;
    const below = this.#rows[(slot * down + second[y]) * across + column] ?? -1;
    const one = above < 0 ? 0 : 1 - part[y];
    const two = below < 0 ? 0 : part[y];
    const [up, low] = [3 * Math.max(0, above), 3 * Math.max(0, below)];
    for (let n = 0; n < 3; n++) out[n] = one * table[up + n] + two * table[low + n];
    return one + two;
  }

  /** Which two columns of squares a pixel lies between; of two neighbours or, at a border, twice of the last one. */
  columnsAt(x: number): number {
    return this.#over.first[x] + this.#over.second[x];
  }

  #hold(slot: number, x: number, y: number): void {
    this.#leftWeight = this.#between(slot, this.#over.first[x], y, this.#left);
    this.#rightWeight = this.#between(slot, this.#over.second[x], y, this.#right);
  }

  /** Writes the pixels of one slot from `x` to before `end`, all between the same columns, as RGBA from byte `to` on. */
  paint(slot: number, x: number, end: number, y: number, out: Uint8ClampedArray, to: number): void {
    this.#hold(slot, x, y);
    const { part } = this.#over;
    const [leftWeight, rightWeight] = [this.#leftWeight, this.#rightWeight];
    const left = this.#left;
    const right = this.#right;
    for (let i = x, at = to; i < end; i++, at += 4) {
      const two = part[i];
      const one = 1 - two;
      const weight = one * leftWeight + two * rightWeight;
      if (weight <= 0) continue;
      out[at] = (one * left[0] + two * right[0]) / weight;
      out[at + 1] = (one * left[1] + two * right[1]) / weight;
      out[at + 2] = (one * left[2] + two * right[2]) / weight;
    }
  }

  /** Fills `rgb`; false where the slot is in none of the squares round that pixel. */
  look(slot: number, x: number, y: number): boolean {
    this.#hold(slot, x, y);
    const two = this.#over.part[x];
    const one = 1 - two;
    const weight = one * this.#leftWeight + two * this.#rightWeight;
    if (weight <= 0) return false;
    for (let n = 0; n < 3; n++) this.rgb[n] = (one * this.#left[n] + two * this.#right[n]) / weight;
    return true;
  }
}

/**
 * A picture whose slots run, and run into each other at soft edges where a blend is given. `table` has 3 bytes a row
 * of the grid, red, green, blue in sRGB. Writes opaque RGBA bytes into `out`.
 */
export function paintSquares(
  slotMap: Uint8Array,
  size: PixelSize,
  grid: SquareGrid,
  table: Uint8ClampedArray,
  blend: SoftBlend | null,
  out: Uint8ClampedArray,
): void {
  const { width, height } = size;
  const colours = new SquareColours(grid, table, size);
  const { rgb } = colours;
  out.fill(255);
  for (let y = 0; y < height; y++) {
    const row = y * width;
    for (let x = 0, end = 0; x < width; x = end) {
      const slot = slotMap[row + x];
      const columns = colours.columnsAt(x);
      end = x + 1;
      while (end < width && slotMap[row + end] === slot && colours.columnsAt(end) === columns)
        end++;
      colours.paint(slot, x, end, y, out, 4 * (row + x));
    }
  }
  if (!blend) return;
  const { pixels, partners, shares } = blend;
  for (let n = 0; n < pixels.length; n++) {
    const i = pixels[n];
    if (!colours.look(partners[n], i % width, Math.floor(i / width))) continue;
    const share = shares[n] / 256;
    for (let c = 0; c < 3; c++) out[4 * i + c] = (1 - share) * out[4 * i + c] + share * rgb[c];
  }
}

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
 * Row of every slot and square, slot by slot: its own, else that of a square near by, for soft edges; -1 further off.
 */
function rowsBySquare({ across, down, slots, squares }: SquareGrid): Int32Array {
  const count = across * down;
  const rows = new Int32Array(256 * count).fill(-1);
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
  /** Red, green, blue, 0..255, of the pixel looked at. */
  readonly rgb = new Float64Array(3);

  constructor(grid: SquareGrid, table: Uint8ClampedArray, { width, height }: PixelSize) {
    this.#grid = grid;
    this.#table = table;
    this.#rows = rowsBySquare(grid);
    this.#over = betweenSquares(width, grid.sidePx, grid.across);
    this.#along = betweenSquares(height, grid.sidePx, grid.down);
  }

  /** Fills `rgb`; false where the slot is in none of the squares round that pixel. */
  look(slot: number, x: number, y: number): boolean {
    const { across, down } = this.#grid;
    const rows = this.#rows;
    const table = this.#table;
    const over = this.#over;
    const along = this.#along;
    const upper = (slot * down + along.first[y]) * across;
    const lower = (slot * down + along.second[y]) * across;
    const [left, right] = [over.first[x], over.second[x]];
    const [down1, right1] = [along.part[y], over.part[x]];
    const [up1, left1] = [1 - down1, 1 - right1];
    // The four squares round the pixel; one its slot is not in weighs nothing.
    const a = rows[upper + left];
    const b = rows[upper + right];
    const c = rows[lower + left];
    const d = rows[lower + right];
    const wa = a < 0 ? 0 : up1 * left1;
    const wb = b < 0 ? 0 : up1 * right1;
    const wc = c < 0 ? 0 : down1 * left1;
    const wd = d < 0 ? 0 : down1 * right1;
    const weight = wa + wb + wc + wd;
    if (weight <= 0) return false;
    const [at, bt, ct, dt] = [
      3 * Math.max(0, a),
      3 * Math.max(0, b),
      3 * Math.max(0, c),
      3 * Math.max(0, d),
    ];
    const { rgb } = this;
    for (let n = 0; n < 3; n++) {
      const sum = wa * table[at + n] + wb * table[bt + n] + wc * table[ct + n] + wd * table[dt + n];
      rgb[n] = sum / weight;
    }
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
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      if (!colours.look(slotMap[i], x, y)) continue;
      out[4 * i] = rgb[0];
      out[4 * i + 1] = rgb[1];
      out[4 * i + 2] = rgb[2];
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

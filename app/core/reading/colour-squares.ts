import type { Lab } from '../colour/lab.ts';
import { type LinearRaster, writeLabs } from '../raster/linear-raster.ts';
import type { PixelSize } from '../raster/size.ts';
import { greyWeight } from './shapes/cells.ts';

/**
 * What the colours of a slot do over the sheet: the sheet is ruled into squares, and every slot has a row for each
 * square it has pixels in. Plain lists of one length, row by row.
 */
export interface ColourSquares {
  readonly across: number;
  readonly down: number;
  /** Side of a square in px of the raster; the last ones may reach over the border. */
  readonly sidePx: number;
  readonly slots: readonly number[];
  /** Number of the square, row by row of the sheet. */
  readonly squares: readonly number[];
  /** How much of the square the slot has, 0..1. */
  readonly shares: readonly number[];
  /** Mean colour of its pixels there, L*, a*, b*: 3 a row. a* and b* as a texture looks, which is brighter than its mean. */
  readonly colours: readonly number[];
}

/** A brush says nothing finer than this about how a wash runs (own). */
const squareMm = 5;

/** A pixel this near the border of its slot is half its neighbour's colour, mm ... */
const borderMm = 0.7;
/** ... and hardly counts. */
const borderWeight = 0.04;

const rounded = (value: number): number => Math.round(value * 100) / 100;

/** Rows of sheet between two pauses. */
const linesAtATime = 64;

/** How a picture is ruled. */
interface Ruling extends PixelSize {
  readonly across: number;
  readonly down: number;
  readonly sidePx: number;
  /** See `borderMm`, px. */
  readonly reach: number;
}

/** Rows of squares as they are found, and what is summed up for each. */
class SquareSums {
  readonly slots: number[] = [];
  readonly squares: number[] = [];
  /** Pixels, weight, weighted L*; weight by C*, weighted a*, b*. */
  readonly sums: number[] = [];
  readonly #rowOf: Int32Array;
  readonly #squareOf: Int32Array;
  readonly #labs: Float64Array;

  constructor({ width, across, down, sidePx }: Ruling, slotCount: number) {
    this.#rowOf = new Int32Array(slotCount * across * down).fill(-1);
    this.#squareOf = Int32Array.from({ length: width }, (_, x) => Math.floor(x / sidePx));
    this.#labs = new Float64Array(3 * width);
  }

  /** Adds a line of pixels. */
  add(slotMap: Uint8Array, raster: LinearRaster, y: number, ruling: Ruling): void {
    const { width, height, across, sidePx, reach } = ruling;
    const squareOf = this.#squareOf;
    const labs = this.#labs;
    const line = Math.floor(y / sidePx) * across;
    const start = y * width;
    const above = Math.max(0, y - reach) * width;
    const below = Math.min(height - 1, y + reach) * width;
    writeLabs(raster, start, width, labs);
    // Neighbours mostly share slot and square: a stretch is summed up before it is put away.
    for (let from = 0, x = 0; from < width; from = x) {
      const slot = slotMap[start + from];
      const column = squareOf[from];
      let weights = 0;
      let l = 0;
      let colour = 0;
      let a = 0;
      let b = 0;
      for (; x < width && slotMap[start + x] === slot && squareOf[x] === column; x++) {
        const isInner =
          slotMap[above + x] === slot &&
          slotMap[below + x] === slot &&
          slotMap[start + (x >= reach ? x - reach : 0)] === slot &&
          slotMap[start + (x + reach < width ? x + reach : width - 1)] === slot;
        const weight = isInner ? 1 : borderWeight;
        const along = labs[3 * x + 1];
        const beside = labs[3 * x + 2];
        const colourful = weight * (greyWeight + Math.sqrt(along * along + beside * beside));
        weights += weight;
        l += weight * labs[3 * x];
        colour += colourful;
        a += colourful * along;
        b += colourful * beside;
      }
      const at = this.#placeOf(slot, line + column, ruling);
      const { sums } = this;
      sums[at] += x - from;
      sums[at + 1] += weights;
      sums[at + 2] += l;
      sums[at + 3] += colour;
      sums[at + 4] += a;
      sums[at + 5] += b;
    }
  }

  /** Where the sums of a slot in a square begin. */
  #placeOf(slot: number, square: number, { across, down }: Ruling): number {
    const place = slot * across * down + square;
    if (this.#rowOf[place] < 0) {
      this.#rowOf[place] = this.slots.length;
      this.slots.push(slot);
      this.squares.push(square);
      this.sums.push(0, 0, 0, 0, 0, 0);
    }
    return 6 * this.#rowOf[place];
  }
}

/** The squares of a picture by its slot map; `raster` is of the map's size. */
export function* colourSquares(
  slotMap: Uint8Array,
  raster: LinearRaster,
  pxPerMm: number,
  slotCount = 256,
): Generator<void, ColourSquares> {
  const { width, height } = raster;
  const sidePx = Math.max(1, squareMm * pxPerMm);
  const across = Math.ceil(width / sidePx);
  const down = Math.ceil(height / sidePx);
  const reach = Math.max(1, Math.round(borderMm * pxPerMm));
  const ruling = { width, height, across, down, sidePx, reach };
  const found = new SquareSums(ruling, slotCount);
  for (let y = 0; y < height; y++) {
    if (y % linesAtATime === 0) yield;
    found.add(slotMap, raster, y, ruling);
  }
  const { slots, squares, sums } = found;
  const whole = sidePx * sidePx;
  return {
    across,
    down,
    sidePx,
    slots,
    squares,
    shares: slots.map((_, row) => rounded(Math.min(1, sums[6 * row] / whole))),
    colours: slots.flatMap((_, row) => {
      const at = 6 * row;
      const colourful = sums[at + 3];
      return [sums[at + 2] / sums[at + 1], sums[at + 4] / colourful, sums[at + 5] / colourful].map(
        rounded,
      );
    }),
  };
}

/** The part of a slot that counts as its most colourful (own). */
const vividShare = 0.1;

/** Mean colour of the most colourful tenth of every slot, by the area of its squares; undefined where it has none. */
export function vividColours(
  { slots, shares, colours }: ColourSquares,
  count: number,
): (Lab | undefined)[] {
  const rowsOf: number[][] = Array.from({ length: count }, () => []);
  for (const [row, slot] of slots.entries()) rowsOf[slot]?.push(row);
  const chroma = slots.map((_, row) => Math.hypot(colours[3 * row + 1], colours[3 * row + 2]));
  return rowsOf.map((rows) => {
    const area = rows.reduce((sum, row) => sum + shares[row], 0);
    if (area === 0) return undefined;
    const sum: [number, number, number] = [0, 0, 0];
    let seen = 0;
    for (const row of rows.toSorted((one, two) => chroma[two] - chroma[one] || one - two)) {
      if (seen >= vividShare * area) break;
      for (let c = 0; c < 3; c++) sum[c] += shares[row] * colours[3 * row + c];
      seen += shares[row];
    }
    return [sum[0] / seen, sum[1] / seen, sum[2] / seen];
  });
}

/** The same in squares `by` times as wide, each slot's rows in them brought together by their shares. */
export function coarserSquares(fine: ColourSquares, by: number): ColourSquares {
  const across = Math.ceil(fine.across / by);
  const down = Math.ceil(fine.down / by);
  const rowOf = new Map<number, number>();
  const slots: number[] = [];
  const squares: number[] = [];
  const sums: number[] = [];
  for (const [row, square] of fine.squares.entries()) {
    const line = Math.floor(Math.floor(square / fine.across) / by);
    const coarse = line * across + Math.floor((square % fine.across) / by);
    const place = fine.slots[row] * across * down + coarse;
    const to = rowOf.get(place) ?? slots.length;
    if (to === slots.length) {
      rowOf.set(place, to);
      slots.push(fine.slots[row]);
      squares.push(coarse);
      sums.push(0, 0, 0, 0);
    }
    const share = Math.max(1e-3, fine.shares[row]);
    sums[4 * to] += share;
    for (let c = 0; c < 3; c++) sums[4 * to + 1 + c] += share * fine.colours[3 * row + c];
  }
  return {
    ...{ across, down, sidePx: fine.sidePx * by, slots, squares },
    shares: slots.map((_, row) => Math.min(1, sums[4 * row] / (by * by))),
    colours: slots.flatMap((_, row) => [1, 2, 3].map((c) => sums[4 * row + c] / sums[4 * row])),
  };
}

import type { Lab, Point } from '../../colour/lab.ts';

/** A small shape the washes can not hold: it stands off the smooth colour that its slot has there. */
export interface Detail {
  /** Lighter than what lies round it, or else darker or more colourful. */
  readonly isLight: boolean;
  /** Where it is, in lines, 3 numbers each: row, first cell, one past the last; a cell is `Details.cellPx` wide. */
  readonly lines: readonly number[];
  /** Middle, 0..1 of the raster's width and height. */
  readonly at: Point;
  readonly areaMm2: number;
  /** Mean colour in the photo. */
  readonly lab: Lab;
  /** Rows of the reading's squares it lies in, and the share of it in each. */
  readonly rows: readonly number[];
  readonly shares: readonly number[];
  /** How near to the centre of interest, 0..1; see `interestIn`. */
  readonly near: number;
}

export interface Details {
  /** Side of a cell of the lines, px of the raster. */
  readonly cellPx: number;
  /** What matters most first: by contrast, area and nearness. */
  readonly shapes: readonly Detail[];
}

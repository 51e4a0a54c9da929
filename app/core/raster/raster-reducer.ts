import { p3ToSrgb, type RgbSpace } from '../colour/display-p3.ts';
import { linearOfCode } from '../colour/srgb.ts';
import { type ClippedShares, emptyRaster, type LinearRaster } from './linear-raster.ts';
import { Room } from './room.ts';
import type { PixelSize } from './size.ts';

// Read once, for the loops: some ways to load a file look imports up each time.
const toLinear = linearOfCode;

/** For source place i: the output place its first part falls on, and how much of it does, 0..1. */
interface Spread {
  readonly first: Int32Array;
  readonly part: Float64Array;
}

function spreadOf(source: number, output: number): Spread {
  const first = new Int32Array(source);
  const part = new Float64Array(source);
  for (let i = 0; i < source; i++) {
    // Whole numbers until the one division, so that equal sizes map exactly one to one.
    const place = Math.floor((i * output) / source);
    const end = (i + 1) * output;
    first[i] = place;
    part[i] = Math.min(1, ((place + 1) * source - i * output) / (end - i * output));
  }
  return { first, part };
}

/** Both channels' ends: within one code, because lossy files rarely hold the exact end. */
const nearWhite = 254;
const nearBlack = 1;

/**
 * Averages linear light over the exact area of the source below each output pixel (fractional
 * weights both ways). Fed with strips of RGBA rows from top to bottom, so the source never has to
 * be in memory at once. The source is opaque: transparency is backed with white before. Its codes are
 * of the space told; the raster has the sRGB primaries either way.
 */
export class RasterReducer {
  readonly #source: PixelSize;
  readonly #space: RgbSpace;
  readonly #raster: LinearRaster;
  readonly #columns: Spread;
  readonly #rows: Spread;
  /** Sums of the output row being filled and of the one after it: red, green, blue interleaved. */
  #current: Float64Array;
  #next: Float64Array;
  readonly #line: Float64Array;
  #row = 0;
  #light = 0;
  #dark = 0;

  /** The raster is taken of the room. Throws a RangeError where the output would be larger than the source or empty. */
  constructor(source: PixelSize, output: PixelSize, space: RgbSpace = 'srgb', room = new Room()) {
    if (output.width > source.width || output.height > source.height) {
      throw new RangeError('A raster is never larger than its source');
    }
    if (output.width < 1 || output.height < 1) throw new RangeError('A raster is never empty');
    this.#source = source;
    this.#space = space;
    this.#raster = emptyRaster(output.width, output.height, room);
    this.#columns = spreadOf(source.width, output.width);
    this.#rows = spreadOf(source.height, output.height);
    // One place more than the row: the second part of the last pixel has weight 0 but is written.
    this.#line = new Float64Array(3 * output.width + 3);
    this.#current = new Float64Array(3 * output.width);
    this.#next = new Float64Array(3 * output.width);
  }

  /** The next rows of the source, RGBA codes, `rowCount` times the source's width. */
  addRows(rgba: Uint8Array | Uint8ClampedArray, rowCount: number): void {
    if (rgba.length < rowCount * this.#source.width * 4) {
      throw new RangeError('Fewer bytes than rows');
    }
    if (this.#row + rowCount > this.#source.height)
      throw new RangeError('More rows than announced');
    const { width, height } = this.#source;
    const isWhole = this.#raster.width === width && this.#raster.height === height;
    if (isWhole) this.#copyRows(rgba, rowCount);
    else for (let i = 0; i < rowCount; i++) this.#addRow(rgba, i * width * 4);
  }

  /** A source of the raster's own size: nothing to average. */
  #copyRows(rgba: Uint8Array | Uint8ClampedArray, rowCount: number): void {
    const { width, red, green, blue } = this.#raster;
    let light = 0;
    let dark = 0;
    const start = this.#row * width;
    const end = start + rowCount * width;
    for (let to = start, at = 0; to < end; to++, at += 4) {
      const r = rgba[at];
      const g = rgba[at + 1];
      const b = rgba[at + 2];
      if (r >= nearWhite && g >= nearWhite && b >= nearWhite) light++;
      else if (r <= nearBlack && g <= nearBlack && b <= nearBlack) dark++;
      red[to] = toLinear[r];
      green[to] = toLinear[g];
      blue[to] = toLinear[b];
    }
    if (this.#space === 'display-p3') p3ToSrgb(this.#raster, start, end);
    this.#light += light;
    this.#dark += dark;
    this.#row += rowCount;
  }

  #addRow(rgba: Uint8Array | Uint8ClampedArray, start: number): void {
    const line = this.#line.fill(0);
    const { first, part } = this.#columns;
    const width = this.#source.width;
    let light = 0;
    let dark = 0;
    for (let x = 0, at = start; x < width; x++, at += 4) {
      const r = rgba[at];
      const g = rgba[at + 1];
      const b = rgba[at + 2];
      if (r >= nearWhite && g >= nearWhite && b >= nearWhite) light++;
      else if (r <= nearBlack && g <= nearBlack && b <= nearBlack) dark++;
      const red = toLinear[r];
      const green = toLinear[g];
      const blue = toLinear[b];
      const share = part[x];
      const to = 3 * first[x];
      line[to] = line[to] + share * red;
      line[to + 1] = line[to + 1] + share * green;
      line[to + 2] = line[to + 2] + share * blue;
      if (share === 1) continue;
      line[to + 3] = line[to + 3] + (1 - share) * red;
      line[to + 4] = line[to + 4] + (1 - share) * green;
      line[to + 5] = line[to + 5] + (1 - share) * blue;
    }
    this.#light += light;
    this.#dark += dark;
    this.#spreadDown();
  }

  #spreadDown(): void {
    const share = this.#rows.part[this.#row];
    const place = this.#rows.first[this.#row];
    const current = this.#current;
    const next = this.#next;
    const line = this.#line;
    for (let i = 0; i < current.length; i++) {
      const sum = line[i];
      current[i] = current[i] + share * sum;
      next[i] = next[i] + (1 - share) * sum;
    }
    this.#row++;
    const last = this.#row === this.#source.height;
    if (last || this.#rows.first[this.#row] !== place) this.#writeRow(place);
  }

  #writeRow(place: number): void {
    const { width, height, red, green, blue } = this.#raster;
    const perPixel = (width * height) / (this.#source.width * this.#source.height);
    const current = this.#current;
    for (let x = 0, to = place * width; x < width; x++, to++) {
      red[to] = Math.min(1, current[3 * x] * perPixel);
      green[to] = Math.min(1, current[3 * x + 1] * perPixel);
      blue[to] = Math.min(1, current[3 * x + 2] * perPixel);
    }
    if (this.#space === 'display-p3') p3ToSrgb(this.#raster, place * width, (place + 1) * width);
    this.#current = this.#next;
    this.#next = current.fill(0);
  }

  /** The finished raster; a RangeError while rows are missing. */
  finish(): { raster: LinearRaster; clipped: ClippedShares } {
    if (this.#row < this.#source.height) throw new RangeError('Rows of the picture are missing');
    const pixels = this.#source.width * this.#source.height;
    return {
      raster: this.#raster,
      clipped: { light: this.#light / pixels, dark: this.#dark / pixels },
    };
  }
}

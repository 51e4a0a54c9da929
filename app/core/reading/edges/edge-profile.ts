import type { PixelSize } from '../../raster/size.ts';
import type { ContourLine } from '../../raster/smooth-line.ts';
import type { Contour } from '../../raster/trace-contours.ts';

/** What was measured along one contour, sample by sample. */
export interface MeasuredContour {
  readonly contour: Contour;
  readonly line: ContourLine;
  /** Place of the line each sample was taken at. */
  readonly places: Int32Array;
  /** Difference of lightness across, L*, 0 or more. */
  readonly contrasts: Float32Array;
  /** Blur of the edge, sigma in px, the photo's own included. */
  readonly sigmas: Float32Array;
  /** Length each sample stands for, px. */
  readonly lengths: Float32Array;
}

/** A plane of L* at 1 / 2^n of the size. */
export interface PyramidLevel {
  readonly plane: Float32Array;
  readonly width: number;
  readonly height: number;
  /** Side of one of its pixels in px of the picture. */
  readonly scale: number;
}

/** The level of half the size: means of two by two pixels; an odd last row or column counts double. */
function halveLevel({ plane, width, height, scale }: PyramidLevel): PyramidLevel {
  const newWidth = (width + 1) >> 1;
  const newHeight = (height + 1) >> 1;
  const half = new Float32Array(newWidth * newHeight);
  for (let y = 0, index = 0; y < newHeight; y++) {
    const top = 2 * y * width;
    const low = Math.min(2 * y + 1, height - 1) * width;
    for (let x = 0; x < newWidth; x++, index++) {
      const left = 2 * x;
      const right = Math.min(left + 1, width - 1);
      const sum = plane[top + left] + plane[top + right] + plane[low + left] + plane[low + right];
      half[index] = sum / 4;
    }
  }
  return { plane: half, width: newWidth, height: newHeight, scale: 2 * scale };
}

/** The plane itself, and `levels - 1` halvings of it. */
export function lightnessPyramid(
  plane: Float32Array,
  { width, height }: PixelSize,
  levels: number,
): PyramidLevel[] {
  const pyramid: PyramidLevel[] = [{ plane, width, height, scale: 1 }];
  while (pyramid.length < levels) pyramid.push(halveLevel(pyramid.at(-1) as PyramidLevel));
  return pyramid;
}

/**
 * Value of a level at (u, v), in its own pixels from the middle of the first one, interpolated between four; outside
 * the picture that of the nearest place of its border.
 */
function readLevel({ plane, width, height }: PyramidLevel, u: number, v: number): number {
  const heldU = Math.min(width - 1, Math.max(0, u));
  const heldV = Math.min(height - 1, Math.max(0, v));
  const column = Math.min(width - 2, heldU | 0);
  const row = Math.min(height - 2, heldV | 0);
  if (column < 0 || row < 0) return plane[(heldV | 0) * width + (heldU | 0)];
  return between(plane, width, column, row, heldU - column, heldV - row);
}

/** Between the pixel of that column and row, the one right of it, and the two below. */
function between(
  plane: Float32Array,
  width: number,
  column: number,
  row: number,
  right: number,
  below: number,
): number {
  const i = row * width + column;
  const top = plane[i] + right * (plane[i + 1] - plane[i]);
  const low = plane[i + width] + right * (plane[i + width + 1] - plane[i + width]);
  return top + below * (low - top);
}

/** Writes `count` values of a level, from (x, y) px of the picture in equal steps, to rows[start ...]. */
function fillRow(
  level: PyramidLevel,
  x: number,
  y: number,
  stepX: number,
  stepY: number,
  rows: Float32Array,
  start: number,
  count: number,
): void {
  const { plane, width, height, scale } = level;
  const perPx = 1 / scale;
  const end = start + count;
  const [lastU, lastV] = [
    x * perPx - 0.5 + count * stepX * perPx,
    y * perPx - 0.5 + count * stepY * perPx,
  ];
  const [firstU, firstV] = [x * perPx - 0.5, y * perPx - 0.5];
  const isInside =
    Math.min(firstU, lastU) >= 0 &&
    Math.min(firstV, lastV) >= 0 &&
    Math.max(firstU, lastU) < width - 1 &&
    Math.max(firstV, lastV) < height - 1;
  if (!isInside) {
    for (let k = start; k < end; k++, x += stepX, y += stepY) {
      rows[k] = readLevel(level, x * perPx - 0.5, y * perPx - 0.5);
    }
    return;
  }
  for (let k = start; k < end; k++, x += stepX, y += stepY) {
    const u = x * perPx - 0.5;
    const v = y * perPx - 0.5;
    const column = u | 0;
    const row = v | 0;
    rows[k] = between(plane, width, column, row, u - column, v - row);
  }
}

/** Samples of a profile; the contour lies between the two in the middle. */
export const profileSamples = 32;
/** Where the contour lies, in samples. */
export const profileMiddle = (profileSamples - 1) / 2;
/** So many places of the contour to either side are averaged: about 5 px. */
const alongEachWay = 6;
/** Cosine of 45 degrees: a place whose normal differs by more lies round a corner. */
const sameDirection = Math.SQRT1_2;

/**
 * Lightness along the normals of one contour after another, averaged along the contour. The rows of the
 * finest level are read once a contour, as neighbouring places share them.
 */
export class EdgeProfile {
  readonly values = new Float64Array(profileSamples);
  readonly #pyramid: readonly PyramidLevel[];
  #line: ContourLine | undefined;
  #rows = new Float32Array(0);

  constructor(pyramid: readonly PyramidLevel[]) {
    this.#pyramid = pyramid;
  }

  /** Turns to another contour. */
  setLine(line: ContourLine): void {
    this.#line = line;
    if (this.#rows.length < line.count * profileSamples) {
      this.#rows = new Float32Array(2 * line.count * profileSamples);
    }
    for (let i = 0; i < line.count; i++) this.#readRow(line, i, 0, i * profileSamples);
  }

  #readRow(line: ContourLine, i: number, level: number, start: number): void {
    const plane = this.#pyramid[level];
    const { scale } = plane;
    const stepX = line.normalX[i] * scale;
    const stepY = line.normalY[i] * scale;
    const x = line.x[i] - profileMiddle * stepX;
    const y = line.y[i] - profileMiddle * stepY;
    fillRow(plane, x, y, stepX, stepY, this.#rows, start, profileSamples);
  }

  /** Fills `values` with the mean profile about place i, from slot a to slot b. */
  fill(i: number, level: number): void {
    const line = this.#line;
    if (!line) throw new RangeError('No contour was set');
    const { values } = this;
    values.fill(0);
    const spacing = 1 << level;
    let count = 0;
    for (let n = -alongEachWay; n <= alongEachWay; n++) {
      let j = i + n * spacing;
      if (line.closed) j = ((j % line.count) + line.count) % line.count;
      else if (j < 0 || j >= line.count) continue;
      const along = line.normalX[j] * line.normalX[i] + line.normalY[j] * line.normalY[i];
      if (along < sameDirection) continue;
      let start = j * profileSamples;
      if (level > 0) {
        start = line.count * profileSamples;
        if (this.#rows.length < start + profileSamples) this.#grow(start + profileSamples);
        this.#readRow(line, j, level, start);
      }
      const rows = this.#rows;
      for (let k = 0; k < profileSamples; k++) values[k] += rows[start + k];
      count++;
    }
    for (let k = 0; k < profileSamples; k++) values[k] /= count;
  }

  #grow(length: number): void {
    const larger = new Float32Array(length);
    larger.set(this.#rows);
    this.#rows = larger;
  }
}

/** At most so many further contours are found on either side. */
const mostCrossings = 4;
const half = profileSamples / 2;
/**
 * Search radius in samples: larger than half a profile, because a blurred edge beyond its end still
 * changes the lightness within it.
 */
const searchRadius = 28;

/** Where a normal meets further contours on one side, the nearest first. */
export interface SideCrossings {
  /** Distance from the contour, samples. */
  readonly distances: Float64Array;
  count: number;
  /** Samples between the contour and the end of the picture, at most half a profile. */
  room: number;
}

export const createCrossings = (): SideCrossings => ({
  distances: new Float64Array(mostCrossings),
  count: 0,
  room: half,
});

/**
 * Walks from place i of a contour along its normal, to slot b for `side` 1 and to slot a for -1, in
 * steps of `scale` px, and notes where the slot changes.
 */
export function findCrossings(
  slots: Uint8Array,
  { width, height }: PixelSize,
  line: ContourLine,
  i: number,
  side: 1 | -1,
  scale: number,
  ownSlot: number,
  found: SideCrossings,
): void {
  const stepX = line.normalX[i] * scale * side;
  const stepY = line.normalY[i] * scale * side;
  let x = line.x[i] + stepX / 2;
  let y = line.y[i] + stepY / 2;
  found.count = 0;
  found.room = half;
  let slot = -1;
  for (let k = 0; k < searchRadius; k++, x += stepX, y += stepY) {
    const column = Math.floor(x);
    const row = Math.floor(y);
    if (column < 0 || row < 0 || column >= width || row >= height) {
      found.room = Math.min(half, k);
      return;
    }
    const next = slots[row * width + column];
    if (slot === -1) {
      // The smoothed line cuts the stairs of the pixels, so its own side may begin a little later.
      if (next === ownSlot || k >= 2) slot = next;
      continue;
    }
    if (next === slot) continue;
    slot = next;
    if (found.count < mostCrossings) found.distances[found.count++] = k;
  }
}

/** Place in the profile that lies so far from the contour on one side, all in samples. */
export const crossingPlace = (distance: number, side: 1 | -1): number =>
  profileMiddle + side * distance;

import { type Lab, linearOfLab, type Point } from '../colour/lab.ts';
import { linearOfCode } from '../colour/srgb.ts';
import type { LabPlanes, LinearRaster } from '../raster/linear-raster.ts';
import type { PixelSize } from '../raster/size.ts';

/** Side of a cell, px of the squared sheet: some 3 mm. */
const cellPx = 6;

/** What a cell is in the expected sheet: paint, bare paper, or the verge round the sheet, which may be paper. */
export type CellKind = 'paint' | 'paper' | 'verge';

/** One small part of the squared photo beside the same part of the expected sheet. */
export interface LightCell {
  readonly kind: CellKind;
  /** From the middle of the sheet, 1 at the ends of its long side. */
  readonly x: number;
  readonly y: number;
  /** Linear red, green, blue as photographed. */
  readonly light: readonly [number, number, number];
  /** The same of the expected colour in even daylight. */
  readonly expected: readonly [number, number, number];
  /** L* of the expected colour. */
  readonly lightness: number;
}

/** The squared photo: the sheet with a verge of its surroundings, `margin` px wide. */
export interface SquaredSheet {
  readonly raster: LinearRaster;
  readonly margin: number;
  readonly size: PixelSize;
}

/** Within this of the paper a colour is bare paper, CIE 1976 difference (own). */
const paperWithin = 1.5;
/** A cell whose expected lightness spreads more than this holds an edge, L* (own). */
const evenWithin = 2.5;
/** From this linear light on a channel is at its end: code 252. */
export const clippedFrom = linearOfCode[252];
/** A finger shows paper so far round a place, px of the squared sheet. */
const shownPx = 9;
/** A cell of the verge whose light spreads more than this share of it lies on an edge of tape or board (own). */
const vergeSpreads = 0.08;

/** How far the light of a square spreads, as a share of its mean: a deviation, of its green alone. */
function spreadOfLight({ width, green }: LinearRaster, left: number, top: number): number {
  let [sum, squares] = [0, 0];
  for (let y = top; y < top + cellPx; y++)
    for (let i = y * width + left; i < y * width + left + cellPx; i++) {
      sum += green[i];
      squares += green[i] * green[i];
    }
  const count = cellPx * cellPx;
  const mean = sum / count;
  return Math.sqrt(Math.max(0, squares / count - mean * mean)) / Math.max(1e-4, mean);
}

/** Mean light of a square of the raster; null where a pixel is missing or many are at the end of the scale. */
function meanLight({ width, red, green, blue }: LinearRaster, left: number, top: number) {
  const sum: [number, number, number] = [0, 0, 0];
  let clipped = 0;
  for (let y = top; y < top + cellPx; y++) {
    for (let i = y * width + left; i < y * width + left + cellPx; i++) {
      sum[0] += red[i];
      sum[1] += green[i];
      sum[2] += blue[i];
      if (Math.max(red[i], green[i], blue[i]) >= clippedFrom) clipped++;
    }
  }
  const count = cellPx * cellPx;
  if (Number.isNaN(sum[0]) || clipped > 0.1 * count) return null;
  return [sum[0] / count, sum[1] / count, sum[2] / count] as const;
}

/** Mean colour of the expected sheet in the same square, how its lightness spreads, and whether all of it is bare paper. */
function meanExpected(
  { lightness, a, b }: LabPlanes,
  width: number,
  left: number,
  top: number,
  paper: Lab,
) {
  let [l, reddish, yellowish, squares, bare] = [0, 0, 0, 0, 0];
  for (let y = top; y < top + cellPx; y++)
    for (let i = y * width + left; i < y * width + left + cellPx; i++) {
      l += lightness[i];
      reddish += a[i];
      yellowish += b[i];
      squares += lightness[i] * lightness[i];
      if (Math.hypot(lightness[i] - paper[0], a[i] - paper[1], b[i] - paper[2]) < paperWithin)
        bare++;
    }
  const count = cellPx * cellPx;
  const lab: Lab = [l / count, reddish / count, yellowish / count];
  return {
    lab,
    isEven: squares / count - lab[0] * lab[0] < evenWithin * evenWithin,
    isBare: bare === count,
  };
}

/**
 * Cells of the sheet that hold no edge, and of the verge round it; `expected` is of the sheet's size, `bare`
 * places, 0..1 of the sheet or a little beyond, that she says are paper.
 */
export function lightCells(
  { raster, margin, size }: SquaredSheet,
  expected: LabPlanes,
  paper: Lab,
  bare: readonly Point[] = [],
): LightCell[] {
  const cells: LightCell[] = [];
  const half = Math.max(size.width, size.height) / 2;
  const place = (left: number, top: number) => ({
    x: (left + cellPx / 2 - margin - size.width / 2) / half,
    y: (top + cellPx / 2 - margin - size.height / 2) / half,
  });
  const isShown = (x: number, y: number): boolean =>
    bare.some(([u, v]) => Math.hypot(u * size.width - x, v * size.height - y) < shownPx);
  const paperLight = linearOfLab(paper);
  for (let top = 0; top + cellPx <= raster.height; top += cellPx) {
    for (let left = 0; left + cellPx <= raster.width; left += cellPx) {
      const [x, y] = [left - margin, top - margin];
      const isInside = x >= 0 && y >= 0 && x + cellPx <= size.width && y + cellPx <= size.height;
      const isOutside = x + cellPx <= -1 || y + cellPx <= -1 || x > size.width || y > size.height;
      if (!isInside && !isOutside) continue;
      const light = meanLight(raster, left, top);
      if (!light) continue;
      const shown = isShown(x + cellPx / 2, y + cellPx / 2);
      if (!shown && isOutside && spreadOfLight(raster, left, top) > vergeSpreads) continue;
      if (shown || isOutside) {
        cells.push({
          kind: shown ? 'paper' : 'verge',
          ...place(left, top),
          light,
          expected: paperLight,
          lightness: paper[0],
        });
        continue;
      }
      const found = meanExpected(expected, size.width, x, y, paper);
      if (!found.isEven) continue;
      cells.push({
        kind: found.isBare ? 'paper' : 'paint',
        ...place(left, top),
        light,
        expected: linearOfLab(found.lab),
        lightness: found.lab[0],
      });
    }
  }
  return cells;
}

import type { Point } from '../colour/lab.ts';
import { rasterLongSidePx } from '../limits.ts';

export interface PixelSize {
  readonly width: number;
  readonly height: number;
}

/** Size of the working raster: never larger than the source, never 0 on a side. All px. */
export function rasterSize(
  widthPx: number,
  heightPx: number,
  longSidePx: number = rasterLongSidePx,
): PixelSize {
  if (!(widthPx >= 1 && heightPx >= 1 && longSidePx >= 1)) {
    throw new RangeError(`A picture has at least one pixel each way, not ${widthPx} x ${heightPx}`);
  }
  const scale = Math.min(1, longSidePx / Math.max(widthPx, heightPx));
  const side = (px: number): number => Math.max(1, Math.round(px * scale));
  return { width: side(widthPx), height: side(heightPx) };
}

/** Pixels of a raster to one mm of the sheet it fills; the geometric mean where the two ways differ. */
export const computePxPerMm = (
  { width, height }: PixelSize,
  sheet: { readonly widthMm: number; readonly heightMm: number },
): number => Math.sqrt((width * height) / (sheet.widthMm * sheet.heightMm));

/** Farther than this share of the long side no softening goes, however small the sheet. */
const largestShare = 0.015;

/** A length on the sheet in px of the raster: at least 1, and small beside the picture. */
export const onSheetPx = (mm: number, pxPerMm: number, longSidePx: number): number =>
  Math.max(1, Math.min(mm * pxPerMm, largestShare * longSidePx));

/** A side or a corner of the sheet. */
export const sides = [
  'right',
  'lower right',
  'bottom',
  'lower left',
  'left',
  'upper left',
  'top',
  'upper right',
] as const;

export type Side = (typeof sides)[number];

/** The side a direction points to; x to the right, y down. */
export function sideTowards(x: number, y: number): Side {
  const eighth = Math.round(Math.atan2(y, x) / (Math.PI / 4));
  return sides[(eighth + 8) % 8];
}

export const oppositeSide = (side: Side): Side => sides[(sides.indexOf(side) + 4) % 8];

/** Where on the sheet something lies. */
export type Place = Side | 'middle';

/** Which third of the sheet a place lies in. */
export function placeOf([x, y]: Point): Place {
  const across = x < 1 / 3 ? 'left' : x > 2 / 3 ? 'right' : null;
  const down = y < 1 / 3 ? 'upper' : y > 2 / 3 ? 'lower' : null;
  if (across && down) return `${down} ${across}`;
  if (across) return across;
  return down === null ? 'middle' : down === 'upper' ? 'top' : 'bottom';
}

/**
 * Short side of the rectangle with that area and outline, in their unit; of the square with that
 * area where the outline is shorter than the square's.
 */
export function shortSide(area: number, outline: number): number {
  const quarter = outline / 4;
  const rest = quarter * quarter - area;
  return rest <= 0 ? Math.sqrt(area) : quarter - Math.sqrt(rest);
}

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

import type { PixelSize } from '../../../app/model/pixel-size.ts';

/** Long side of the working raster, px. */
export const rasterLongSidePx = 1600;

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

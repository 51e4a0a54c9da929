import type { PixelSize } from '../../app/model/pixel-size.ts';

/** Largest area of a canvas that every browser fills; beyond it some give an empty one. */
export const largestAreaPx = 16_777_216;

/** Longest side decoded: keeps every turned cut-out under the 65,535 px a canvas may measure. */
const longestSidePx = 32_767;

/**
 * The size to decode a photo at: its own where it fits the area, else both sides reduced by one
 * factor, rounded down so that the area holds, and never to nothing.
 */
export function decodedSize(photo: PixelSize, largestArea: number): PixelSize {
  const { width, height } = photo;
  const scale = Math.min(
    Math.sqrt(largestArea / (width * height)),
    longestSidePx / Math.max(width, height),
  );
  if (scale >= 1) return { width, height };
  return {
    width: Math.max(1, Math.floor(width * scale)),
    height: Math.max(1, Math.floor(height * scale)),
  };
}

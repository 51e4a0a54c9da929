import type { PixelSize } from '../../../app/model/pixel-size.ts';
import type { WhiteMode, WhiteStroke } from '../../../app/model/whites.ts';
import { insideStroke, paintStroke } from '../pixels/stroke-area.ts';

/** What a pixel of the map of her strokes says; 0 where she did not go. */
export const brushedAs: Readonly<Record<WhiteMode, number>> = { keep: 1, paint: 2 };

/** What her strokes leave on every pixel, later ones over earlier: see `brushedAs`. */
export function whiteStrokeMap(strokes: readonly WhiteStroke[], size: PixelSize): Uint8Array {
  const { width, height } = size;
  const map = new Uint8Array(width * height);
  const longSide = Math.max(width, height);
  for (const { mode, path, brush } of strokes) {
    const value = brushedAs[mode];
    if (brush > 0) {
      // At least so wide that a dab reaches the middle of some pixel wherever it falls.
      paintStroke(map, size, path, Math.max(0.75, (brush * longSide) / 2), value);
      continue;
    }
    const inside = insideStroke(path, size);
    for (let i = 0; i < map.length; i++) if (inside[i] === 1) map[i] = value;
  }
  return map;
}

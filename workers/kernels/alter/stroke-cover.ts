import type { PixelSize } from '../../../app/model/pixel-size.ts';
import type { CutStroke } from '../../../app/model/stroke-on-photo.ts';
import { insideStroke, paintStroke } from '../pixels/stroke-area.ts';

/** 1 for every pixel her brush went over, or within the closed line where the brush is 0. */
export function strokeCover({ path, brush }: CutStroke, size: PixelSize): Uint8Array {
  if (brush === 0) return insideStroke(path, size);
  const area = new Uint8Array(size.width * size.height);
  const radius = Math.max(0.5, (brush * Math.max(size.width, size.height)) / 2);
  paintStroke(area, size, path, radius, 1);
  return area;
}

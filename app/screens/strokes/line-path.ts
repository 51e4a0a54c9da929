import type { Point } from '../../model/lab.ts';
import type { PixelSize } from '../../model/pixel-size.ts';

/** The `d` of an SVG path through points (0..1 of the picture), in px of the picture. */
export const linePath = (points: readonly Point[], { width, height }: PixelSize): string =>
  points
    .map(
      ([x, y], i) => `${i === 0 ? 'M' : 'L'}${(x * width).toFixed(1)} ${(y * height).toFixed(1)}`,
    )
    .join('');

import type { PixelSize } from '../../raster/size.ts';
import type { Edge } from './edge.ts';

/** Simplified lightness of a picture, L* x 2.55 a pixel. */
export interface LightnessMap extends PixelSize {
  readonly values: Uint8Array;
}

/**
 * How far apart in lightness, L*, the two sides of an edge are so far away from it (a share of the long side), on the mean over its course:
 * what the eye sees there, whatever thin line or halo lies along it. Null where no spot has room on both sides.
 */
export function contrastAway(
  { path }: Pick<Edge, 'path'>,
  { width, height, values }: LightnessMap,
  awayShare: number,
): number | null {
  const awayPx = awayShare * Math.max(width, height);
  let [sum, length] = [0, 0];
  for (let i = 1; i < path.length; i++) {
    const [fromX, fromY] = [path[i - 1][0] * width, path[i - 1][1] * height];
    const [alongX, alongY] = [path[i][0] * width - fromX, path[i][1] * height - fromY];
    const step = Math.hypot(alongX, alongY);
    if (step === 0) continue;
    const valueAt = (side: number): number | undefined => {
      const x = Math.floor(fromX + alongX / 2 - (side * awayPx * alongY) / step);
      const y = Math.floor(fromY + alongY / 2 + (side * awayPx * alongX) / step);
      return x < 0 || y < 0 || x >= width || y >= height ? undefined : values[y * width + x];
    };
    const [one, other] = [valueAt(1), valueAt(-1)];
    if (one === undefined || other === undefined) continue;
    sum += ((one - other) / 2.55) * step;
    length += step;
  }
  return length > 0 ? Math.abs(sum) / length : null;
}

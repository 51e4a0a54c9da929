import { readFile } from 'node:fs/promises';
import type { Point } from '../../../app/core/colour/lab.ts';
import type { LabPlanes } from '../../../app/core/raster/linear-raster.ts';
import type { PixelSize } from '../../../app/core/raster/size.ts';

interface Feature {
  readonly name: string;
  /** Points of the whole photo, 0..1: in the feature, and in what it stands against. */
  readonly inside: readonly Point[];
  readonly beside: readonly Point[];
  readonly radiusMm: number;
}

/** Features marked by hand in a photograph; none where nobody marked any. */
export async function featuresIn(picture: string): Promise<readonly Feature[]> {
  const { pictures } = JSON.parse(await readFile('tests/fixtures/features.json', 'utf8')) as {
    pictures: readonly { picture: string; features: readonly Feature[] }[];
  };
  return pictures.find((one) => one.picture === picture)?.features ?? [];
}

/** Mean L* of discs about some points of the picture, px. */
function meanLightness(
  { lightness }: LabPlanes,
  { width, height }: PixelSize,
  points: readonly Point[],
  radius: number,
): number {
  let [sum, count] = [0, 0];
  for (const [x, y] of points) {
    for (let v = Math.max(0, Math.ceil(y - radius)); v <= Math.min(height - 1, y + radius); v++) {
      for (let u = Math.max(0, Math.ceil(x - radius)); u <= Math.min(width - 1, x + radius); u++) {
        if ((u - x) ** 2 + (v - y) ** 2 > radius * radius) continue;
        sum += lightness[v * width + u] as number;
        count++;
      }
    }
  }
  if (count === 0) throw new Error('A feature is marked outside the picture');
  return sum / count;
}

/**
 * What of a feature's contrast in the photo, L*, is left on the sheet: 1 all of it, 0 none, below 0 turned about. The
 * sheet is the centre of the photo, cut to the size's shape.
 */
export function contrastLeft(
  { inside, beside, radiusMm }: Feature,
  [photo, sheet]: readonly [LabPlanes, LabPlanes],
  size: PixelSize,
  whole: PixelSize,
  pxPerMm: number,
): number {
  const scale = Math.max(size.width / whole.width, size.height / whole.height);
  const place = ([x, y]: Point): Point => [
    (x - 0.5) * whole.width * scale + size.width / 2 - 0.5,
    (y - 0.5) * whole.height * scale + size.height / 2 - 0.5,
  ];
  const contrast = (planes: LabPlanes): number => {
    const mean = (points: readonly Point[]): number =>
      meanLightness(planes, size, points.map(place), Math.max(1, radiusMm * pxPerMm));
    return mean(inside) - mean(beside);
  };
  return contrast(sheet) / contrast(photo);
}

import { expect, test } from 'vitest';
import { runToEnd } from '../../../../app/core/numeric/run-to-end.ts';
import { findDeepestPlaces } from '../../../../app/core/raster/deepest-places.ts';
import { labelRuns } from '../../../../app/core/raster/label-shapes.ts';
import { seeded } from '../../../support/reading/seeded.ts';
import { slowWhites } from '../../../support/reading/slow-whites.ts';

test('seeded masks: a pixel of greatest depth, of several the nearest to the centre of gravity', () => {
  const random = seeded(5);
  const size = { width: 29, height: 21 };
  for (const filled of [0.5, 0.8, 0.97]) {
    const mask = Uint8Array.from({ length: 29 * 21 }, () => (random() < filled ? 1 : 0));
    const labels = runToEnd(labelRuns(mask, size));
    const places = [...findDeepestPlaces(labels, size)];
    expect(places.filter((_, shape) => labels.kinds[shape] === 0).every((i) => i === -1)).toBe(
      true,
    );
    const wanted = slowWhites(mask, size).map(({ pixels, deepest }) => {
      const mean = (part: (pixel: number) => number) =>
        pixels.reduce((sum, pixel) => sum + part(pixel), 0) / pixels.length;
      const [x, y] = [mean((pixel) => pixel % 29), mean((pixel) => Math.floor(pixel / 29))];
      const away = (pixel: number) => ((pixel % 29) - x) ** 2 + (Math.floor(pixel / 29) - y) ** 2;
      const least = Math.min(...deepest.map(away));
      return deepest.filter((pixel) => away(pixel) < least + 1e-9);
    });
    const found = places.filter((_, shape) => labels.kinds[shape] === 1);
    expect(found).toHaveLength(wanted.length);
    found.forEach((place, i) => {
      expect(wanted[i]).toContain(place);
    });
  }
});

import { expect, test } from 'vitest';
import { bandOfBins } from '../../../../app/core/reading/sort-pixels.ts';
import { limitsOf } from '../../../../app/screens/look/band-limits.ts';
import { painted, readFor } from '../../../support/reading/rasters.ts';

test('the lightness map is what histogram and bands were made from', async () => {
  const picture = painted(200, 150, (x, y) => {
    const code = Math.round((x * 255) / 199);
    return y < 75 ? [code, code, code] : [code, 120, 60];
  });
  const { reading, lightnessMap, bandMap } = await readFor(picture);
  expect(lightnessMap).toHaveLength(200 * 150);
  const counts = new Array<number>(256).fill(0);
  for (const bin of lightnessMap) counts[bin] = (counts[bin] ?? 0) + 1;
  expect(counts).toEqual(reading.lightness.histogram);
  // Before small shapes are joined to their neighbours, map and bands agree everywhere.
  const bands = bandOfBins(limitsOf(reading.bands));
  const differ = bandMap.filter((band, i) => band !== bands[lightnessMap[i] ?? 0]).length;
  expect(differ / bandMap.length).toBeLessThan(0.05);
});

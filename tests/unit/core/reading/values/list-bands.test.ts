import { expect, test } from 'vitest';
import { CellTones, packCells } from '../../../../../app/core/reading/shapes/cells.ts';
import { onTheSheet, toneRange } from '../../../../../app/core/reading/tone-range.ts';
import { keptBands, listBands } from '../../../../../app/core/reading/values/list-bands.ts';

// Limits and figures are (own): the docstrings of what is tested say why.
test('a band that lost all its shapes leaves its range to its neighbours', () => {
  expect(keptBands([0, 5, 0, 7, 9], [20, 40, 70])).toEqual([
    { was: 1, band: 1, from: 55, to: 100 },
    { was: 3, band: 2, from: 20, to: 55 },
    { was: 4, band: 3, from: 0, to: 20 },
  ]);
  expect(keptBands([0, 0, 3], [50])).toEqual([{ was: 2, band: 1, from: 0, to: 100 }]);
});

test('a band tells the mean of its own pixels: share of the area kept, L*, Munsell value, L* on the sheet', () => {
  // Two pixels of band 1, one of band 2; ten of 14 px are band 1 once shapes are merged.
  const cells = packCells(Uint8Array.of(1, 1, 2), Uint8Array.of(0, 1, 0));
  const planes = {
    lightness: Float32Array.of(80, 60, 30.77),
    a: Float32Array.of(5, 7, 9),
    b: Float32Array.of(1, 2, 3),
  };
  const range = toneRange('photographed', 5, 95, 12, 95.5);
  const kept = keptBands([0, 10, 4], [50]);
  const [light, dark] = listBands(kept, [0, 10, 4], new CellTones(cells, planes), range);
  expect(light).toMatchObject({ band: 1, from: 50, to: 100, share: 10 / 14, lightness: 70 });
  // Munsell value 3 is L* 30.8, value 7 is L* 71 (ASTM D1535, from memory).
  expect(dark?.value).toBeCloseTo(3, 1);
  expect(light?.value).toBeGreaterThan(6.8);
  expect(light?.value).toBeLessThan(7);
  expect(light?.plannedLightness).toBeCloseTo(onTheSheet(range, 70), 9);
});

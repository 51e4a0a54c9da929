import { expect, test } from 'vitest';
import { emptyRaster } from '../../../../app/core/raster/linear-raster.ts';
import { reducedRaster } from '../../../../app/core/raster/reduced-raster.ts';

test('every pixel of a reduced raster is the mean of those it stands for', () => {
  const raster = emptyRaster(8, 4);
  for (let i = 0; i < 32; i++) raster.red[i] = i;
  const half = reducedRaster(raster, 4);
  expect([half.width, half.height]).toEqual([4, 2]);
  const mean = (x: number, y: number): number => {
    const first = 2 * y * 8 + 2 * x;
    return (first + first + 1 + first + 8 + first + 9) / 4;
  };
  for (let y = 0; y < 2; y++)
    for (let x = 0; x < 4; x++) expect(half.red[4 * y + x]).toBe(mean(x, y));
});

test('a raster that is small enough stays as it is', () => {
  const raster = emptyRaster(5, 3);
  raster.green.fill(1);
  expect(reducedRaster(raster, 9)).toEqual(raster);
});

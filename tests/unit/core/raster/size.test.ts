import { expect, test } from 'vitest';
import { computePxPerMm } from '../../../../app/core/raster/size.ts';

test('pixels to a millimetre: those of the sheet, the mean where its form differs a little', () => {
  const size = { width: 1600, height: 1200 };
  expect(computePxPerMm(size, { widthMm: 400, heightMm: 300 })).toBe(4);
  expect(computePxPerMm(size, { widthMm: 200, heightMm: 300 })).toBeCloseTo(Math.sqrt(8 * 4), 12);
});

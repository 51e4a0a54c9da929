import { expect, test } from 'vitest';
import { simplify } from '../../../../workers/kernels/pixels/simplify.ts';
import { drained } from '../reading/drained.ts';
import { painted } from '../reading/rasters.ts';
import { seeded } from '../reading/seeded.ts';

const random = seeded(12);
const { raster } = painted(40, 30, () => {
  const code = 100 + Math.round(60 * random());
  return [code, code, code];
});
const simplified = (pxPerMm: number): Float32Array => drained(simplify(raster, pxPerMm)).lightness;
const apart = (one: Float32Array, other: Float32Array): number =>
  one.reduce((most, value, i) => Math.max(most, Math.abs(value - (other[i] as number))), 0);

test('the brush is 2 mm wide, and never narrower than a pixel', () => {
  const onePixel = simplified(0.5);
  // Coarser pictures: a pixel is more than a brush.
  for (const pxPerMm of [0.4, 0.1]) expect(apart(simplified(pxPerMm), onePixel)).toBe(0);
  // Finer ones are smoothed more at once: the first blur is a pixel wide for all of these.
  for (const pxPerMm of [0.75, 1, 2])
    expect(apart(simplified(pxPerMm), onePixel)).toBeGreaterThan(0.1);
});

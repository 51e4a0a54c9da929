import { expect, test } from 'vitest';
import { shortSide } from '../../../../app/core/raster/size.ts';

test('short side of a rectangle, from its area and outline', () => {
  expect(shortSide(12, 14)).toBeCloseTo(3, 9);
  expect(shortSide(25, 20)).toBeCloseTo(5, 9);
  expect(shortSide(25, 17)).toBe(5);
});

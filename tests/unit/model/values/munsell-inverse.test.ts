import { expect, test } from 'vitest';
import { lightnessOfValue, valueOfLightness } from '../../../../app/model/munsell-value.ts';

test('values come back from their lightness, over the whole scale', () => {
  for (let value = 0; value <= 10; value += 0.05)
    expect(valueOfLightness(lightnessOfValue(value))).toBeCloseTo(value, 6);
});

// ASTM D1535 by its polynomial, CIE 15
test.each([
  [1, 10.4],
  [3, 30.4],
  [5, 51.0],
  [8, 80.5],
  [10, 100],
])('value %d is L* %f', (value, lightness) => {
  expect(lightnessOfValue(value)).toBeCloseTo(lightness, 0);
  expect(Math.abs(lightnessOfValue(value) - lightness)).toBeLessThan(0.1);
});

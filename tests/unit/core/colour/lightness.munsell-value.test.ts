import { describe, expect, it, test } from 'vitest';
import {
  lightnessOfValue,
  luminanceOfLightness,
  luminancePercentOfValue,
  valueOfLightness,
} from '../../../../app/core/colour/lightness.ts';
import standard from '../../../fixtures/munsell-astm-d1535.json';

describe('Munsell value (ASTM D1535)', () => {
  it.each(standard.checkPoints)('V $V has Y $Y', ({ V, Y }) => {
    expect(luminancePercentOfValue(V)).toBeCloseTo(Y, 4);
  });

  it('is found back from lightness', () => {
    for (const [value, lightness] of Object.entries(standard.Lstar)) {
      expect(Math.abs(valueOfLightness(lightness) - Number(value))).toBeLessThan(0.002);
    }
    expect(100 * luminanceOfLightness(50)).toBeCloseTo(18.4187, 3);
  });

  it('rises throughout and is held to 0..10', () => {
    let before = -1;
    for (let lightness = 0; lightness <= 100; lightness += 0.5) {
      const value = valueOfLightness(lightness);
      expect(value).toBeGreaterThan(before);
      before = value;
    }
    expect(valueOfLightness(-5)).toBeCloseTo(0, 6);
    expect(valueOfLightness(130)).toBeCloseTo(10, 6);
  });
});

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

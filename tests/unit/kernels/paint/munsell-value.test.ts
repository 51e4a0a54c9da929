import { describe, expect, it } from 'vitest';
import {
  luminanceOfLightness,
  luminanceOfValue,
  valueOfLightness,
} from '../../../../app/model/munsell-value.ts';
import standard from '../../../fixtures/munsell-astm-d1535.json';

describe('Munsell value (ASTM D1535)', () => {
  it.each(standard.checkPoints)('V $V has Y $Y', ({ V, Y }) => {
    expect(luminanceOfValue(V)).toBeCloseTo(Y, 4);
  });

  it('is found back from lightness', () => {
    for (const [value, lightness] of Object.entries(standard.Lstar)) {
      expect(Math.abs(valueOfLightness(lightness) - Number(value))).toBeLessThan(0.002);
    }
    expect(luminanceOfLightness(50)).toBeCloseTo(18.4187, 3);
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

import { expect, test } from 'vitest';
import {
  cieCurve,
  inverseCieCurve,
  lightnessOfLinear,
  lightnessOfLuminance,
  luminanceOfLightness,
  luminanceOfLinear,
  slopeOfCieCurve,
  tabulatedCieCurve,
} from '../../../../app/core/colour/lightness.ts';

/** From black to white, close together about the joint. */
const places = Array.from({ length: 2001 }, (_, i) => (i / 2000) ** 3);

test('t comes back from f(t), and L* from luminance', () => {
  for (const t of places) {
    expect(inverseCieCurve(cieCurve(t))).toBeCloseTo(t, 14);
    expect(luminanceOfLightness(lightnessOfLuminance(t))).toBeCloseTo(t, 14);
  }
  expect([0, 1].map(lightnessOfLuminance)).toEqual([0, 100]);
  expect([0, 100].map(luminanceOfLightness)).toEqual([0, 1]);
});

// ISO/CIE 11664-4: the two branches meet at t = (6/29)^3, L* 8, with one slope.
test('the branches meet', () => {
  const joint = (6 / 29) ** 3;
  expect(cieCurve(joint * (1 + 1e-9))).toBeCloseTo(cieCurve(joint * (1 - 1e-9)), 9);
  expect(slopeOfCieCurve(joint * (1 + 1e-9))).toBeCloseTo(slopeOfCieCurve(joint * (1 - 1e-9)), 6);
  expect(lightnessOfLuminance(joint)).toBeCloseTo(8, 12);
});

test('the slope is that of the curve', () => {
  for (const t of places.slice(50)) {
    const near = 1e-3 * t;
    const slope = (cieCurve(t + near) - cieCurve(t - near)) / (2 * near);
    expect(Math.abs(slopeOfCieCurve(t) / slope - 1)).toBeLessThan(1e-6);
  }
});

test('the table stays within 6e-6 of the curve, and L* within 0.001', () => {
  for (const t of places) {
    expect(Math.abs(tabulatedCieCurve(t) - cieCurve(t))).toBeLessThan(6e-6);
    expect(Math.abs(lightnessOfLinear(t, t, t) - lightnessOfLuminance(t))).toBeLessThan(0.001);
  }
});

// CSS Color 4, 10.1: red, green and blue of full light.
test.each([
  [1, 0, 0, 0.2126],
  [0, 1, 0, 0.7152],
  [0, 0, 1, 0.0722],
  [1, 1, 1, 1],
])('luminance of %f %f %f is %f', (red, green, blue, luminance) => {
  expect(luminanceOfLinear(red, green, blue)).toBeCloseTo(luminance, 4);
});

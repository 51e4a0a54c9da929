import { expect, test } from 'vitest';
import {
  codeOfLinear,
  encodedOfLinear,
  linearOfCode,
  linearOfEncoded,
} from '../../../../workers/kernels/pixels/srgb.ts';
import { seeded } from './seeded.ts';

// Source of the figures: IEC 61966-2-1:1999.

test('all 256 codes come back exactly', () => {
  for (let code = 0; code < 256; code++) {
    expect(codeOfLinear(linearOfCode[code] as number)).toBe(code);
    expect(Math.round(255 * encodedOfLinear(linearOfEncoded(code / 255)))).toBe(code);
  }
});

test('code 10 lies on the straight branch', () => {
  expect(linearOfCode[10]).toBeCloseTo(0.0030353, 7);
  expect(linearOfCode[10]).toBeCloseTo(10 / 255 / 12.92, 9);
});

test('the branches meet at 0.04045 and the curve rises everywhere', () => {
  const step = linearOfEncoded(0.04045 + 1e-9) - linearOfEncoded(0.04045);
  expect(step).toBeGreaterThan(0);
  expect(step).toBeLessThan(1e-6);
  for (let code = 1; code < 256; code++) {
    expect(linearOfCode[code]).toBeGreaterThan(linearOfCode[code - 1] as number);
  }
});

test('any linear light goes to the nearest code', () => {
  const random = seeded(1);
  for (let i = 0; i < 20_000; i++) {
    const linear = random() ** 3;
    expect(codeOfLinear(linear)).toBe(Math.round(255 * encodedOfLinear(linear)));
  }
});

test('what lies outside is held at the ends', () => {
  expect([-1, Number.NaN, 2, 1, 0].map(codeOfLinear)).toEqual([0, 0, 255, 255, 0]);
});

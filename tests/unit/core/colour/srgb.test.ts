import { useMode as addMode, converter, modeLab65, modeRgb } from 'culori/fn';
import { expect, test } from 'vitest';
import {
  codeOfLinear,
  decodeSrgb,
  linearOfCode,
  makeGrey,
} from '../../../../app/core/colour/srgb.ts';
import { seeded } from '../../../support/reading/seeded.ts';

addMode(modeLab65);
addMode(modeRgb);
const toLab = converter('lab65');
const labOf = (r = 0, g = 0, b = 0) => toLab({ mode: 'rgb', r: r / 255, g: g / 255, b: b / 255 });

test('greys stay what they are', () => {
  const greys = Uint8ClampedArray.from({ length: 1024 }, (_, i) => (i % 4 === 3 ? 255 : i >> 2));
  const before = [...greys];
  makeGrey(greys);
  greys.forEach((code, i) => {
    expect(code).toBe(before[i]);
  });
});

test('a colour keeps its L* within half a code, and is neutral', () => {
  const colours = [255, 0, 0, 255, 0, 0, 255, 255, 255, 255, 0, 255, 60, 90, 200, 128];
  const rgba = Uint8ClampedArray.from(colours);
  makeGrey(rgba);
  for (let p = 0; p < rgba.length; p += 4) {
    expect(rgba[p + 1]).toBe(rgba[p]);
    expect(rgba[p + 2]).toBe(rgba[p]);
    expect(rgba[p + 3]).toBe(colours[p + 3]);
    const wanted = labOf(colours[p], colours[p + 1], colours[p + 2]).l;
    expect(Math.abs(labOf(rgba[p], rgba[p], rgba[p]).l - wanted)).toBeLessThan(0.4);
  }
});

// Source of the figures: IEC 61966-2-1:1999.

test('all 256 codes come back exactly', () => {
  for (let code = 0; code < 256; code++) {
    expect(codeOfLinear(linearOfCode[code] as number)).toBe(code);
  }
});

test('code 10 lies on the straight branch', () => {
  expect(linearOfCode[10]).toBeCloseTo(0.0030353, 7);
  expect(linearOfCode[10]).toBeCloseTo(10 / 255 / 12.92, 9);
});

test('the branches meet at 0.04045 and the curve rises everywhere', () => {
  const step = decodeSrgb(0.04045 + 1e-9) - decodeSrgb(0.04045);
  expect(step).toBeGreaterThan(0);
  expect(step).toBeLessThan(1e-6);
  for (let code = 1; code < 256; code++) {
    expect(linearOfCode[code]).toBeGreaterThan(linearOfCode[code - 1] as number);
  }
});

/** By the encoding branch of the standard, which the product reads off its table of the decoding one. */
const nearest = (linear: number): number =>
  Math.round(255 * (linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055));

test('any linear light goes to the nearest code', () => {
  const random = seeded(1);
  for (let i = 0; i < 20_000; i++) {
    const linear = random() ** 3;
    expect(codeOfLinear(linear)).toBe(nearest(linear));
  }
});

test('what lies outside is held at the ends', () => {
  expect([-1, Number.NaN, 2, 1, 0].map(codeOfLinear)).toEqual([0, 0, 255, 255, 0]);
});

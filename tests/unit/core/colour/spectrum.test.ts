import { converter } from 'culori';
import { expect, it } from 'vitest';
import {
  daylightD65,
  labOfReflectance,
  observerX,
  observerY,
  observerZ,
  spectrumSize,
} from '../../../../app/core/colour/spectrum.ts';
import tables from '../../../fixtures/colorimetry.json';

const flat = (value: number): number[] => Array.from({ length: spectrumSize }, () => value);

it('holds every second value of the standard tables (CIE 15, ISO/CIE 11664-1 and -2)', () => {
  const everySecond = (values: number[]): number[] =>
    values.filter((_, i) => i % 2 === 0).slice(0, spectrumSize);
  expect(everySecond(tables.x_5)).toEqual([...observerX]);
  expect(everySecond(tables.y_5)).toEqual([...observerY]);
  expect(everySecond(tables.z_5)).toEqual([...observerZ]);
  expect(everySecond(tables.d65_5)).toEqual([...daylightD65]);
});

it('a perfect white is L* 100 and greys have no colour (A-NUM-6)', () => {
  for (const reflectance of [0, 0.004, 0.05, 0.184, 0.5, 1]) {
    const [lightness, a, b] = labOfReflectance(flat(reflectance), 0);
    // CIE 15: Y/Yn is the reflectance itself for a grey.
    const wanted =
      reflectance > 216 / 24389 ? 116 * Math.cbrt(reflectance) - 16 : (24389 / 27) * reflectance;
    expect(lightness).toBeCloseTo(wanted, 9);
    expect(Math.abs(a)).toBeLessThan(0.01);
    expect(Math.abs(b)).toBeLessThan(0.01);
  }
  expect(labOfReflectance(flat(1), 0)[0]).toBeCloseTo(100, 10);
  expect(labOfReflectance(flat(1))[0]).toBeCloseTo(100, 10);
});

it('counts lightness from the same white as the rest: D65, as culori lab65 does (A-NUM-6)', () => {
  const lab65 = converter('lab65');
  // The Y of these sRGB colours as a flat reflectance has the same L* as the colour.
  for (const [colour, y] of [
    ['#ff0000', 0.2126390058],
    ['#0000ff', 0.0721923153],
    ['#ffff00', 0.9278076847],
  ] as const) {
    const red = Number.parseInt(colour.slice(1, 3), 16) / 255;
    const green = Number.parseInt(colour.slice(3, 5), 16) / 255;
    const blue = Number.parseInt(colour.slice(5, 7), 16) / 255;
    const wanted = lab65({ mode: 'rgb', r: red, g: green, b: blue }).l;
    expect(Math.abs(labOfReflectance(flat(y), 0)[0] - wanted)).toBeLessThan(0.01);
  }
});

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
import type { Surface } from '../../../../app/core/colour/surface.ts';
import tables from '../../../fixtures/colorimetry.json';

/** No surface at all: what is inside is seen. */
const bare: Surface = { k1: 0, k2: 0 };
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
    const [lightness, a, b] = labOfReflectance(flat(reflectance), bare);
    // CIE 15: Y/Yn is the reflectance itself for a grey.
    const wanted =
      reflectance > 216 / 24389 ? 116 * Math.cbrt(reflectance) - 16 : (24389 / 27) * reflectance;
    expect(lightness).toBeCloseTo(wanted, 9);
    expect(Math.abs(a)).toBeLessThan(0.01);
    expect(Math.abs(b)).toBeLessThan(0.01);
  }
  expect(labOfReflectance(flat(1), bare)[0]).toBeCloseTo(100, 10);
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
    expect(Math.abs(labOfReflectance(flat(y), bare)[0] - wanted)).toBeLessThan(0.01);
  }
});

it('sees every sample through the surface, and that once', () => {
  const surface: Surface = { k1: 0.025, k2: 0.6 };
  // Two reflectances in turn; the light of each worked by hand: 0.4 r / (1 - 0.6 r), then 0.025 + 0.975 of it.
  const [pale, dark] = [0.025 + 0.975 * (0.32 / 0.52), 0.025 + 0.975 * (0.04 / 0.94)];
  const inTurn = (one: number, other: number) => flat(one).map((r, i) => (i % 2 ? other : r));
  const seen = labOfReflectance(inTurn(0.8, 0.1), surface);
  const wanted = labOfReflectance(inTurn(pale, dark), bare);
  for (const i of [0, 1, 2] as const) expect(seen[i]).toBeCloseTo(wanted[i], 10);
});

import { converter } from 'culori';
import { expect, test } from 'vitest';
import {
  greyOf,
  labInPlace,
  lightnessPlane,
  referenceRgba,
  writeLabs,
  writePixelLab,
} from '../../../../app/core/raster/linear-raster.ts';
import { painted } from '../../../support/reading/rasters.ts';
import { seeded } from '../../../support/reading/seeded.ts';

const toLab = converter('lab65');
const expectedLab = (r: number, g: number, b: number): [number, number, number] => {
  const { l, a, b: blue } = toLab({ mode: 'rgb', r: r / 255, g: g / 255, b: b / 255 });
  return [l, a, blue];
};

const random = seeded(7);
const code = (): number => Math.floor(256 * random());
const colours = Array.from({ length: 100_256 }, (_, i): [number, number, number] =>
  i < 256 ? [i, i, i] : [code(), code(), code()],
);
const picture = painted(352, 285, (x, y) => colours[y * 352 + x] ?? [0, 0, 0]);

test('L*, a*, b* of all greys and 100,000 seeded colours are those of culori lab65', () => {
  const lightness = lightnessPlane(picture.raster);
  const planes = labInPlace({
    ...picture.raster,
    red: picture.raster.red.slice(),
    green: picture.raster.green.slice(),
    blue: picture.raster.blue.slice(),
  });
  let worst = 0;
  let worstColour = 0;
  for (const [i, colour] of colours.entries()) {
    const [l, a, b] = expectedLab(...colour);
    worst = Math.max(
      worst,
      Math.abs(l - (lightness[i] as number)),
      Math.abs(l - (planes.lightness[i] as number)),
    );
    worstColour = Math.max(
      worstColour,
      Math.abs(a - (planes.a[i] as number)),
      Math.abs(b - (planes.b[i] as number)),
    );
  }
  expect(worst).toBeLessThan(0.02);
  expect(worstColour).toBeLessThan(0.02);
});

test('of one pixel alone, and of a stretch of them, as well', () => {
  const [one, three] = [new Float64Array(3), new Float64Array(9)];
  // Three of many hues, as published code (culori) has them.
  writeLabs(picture.raster, 300, 3, three);
  for (let k = 0; k < 3; k++) {
    writePixelLab(picture.raster, 300 + k, one);
    for (const [n, wanted] of expectedLab(
      ...(colours[300 + k] as [number, number, number]),
    ).entries()) {
      expect(Math.abs((one[n] as number) - wanted)).toBeLessThan(0.02);
      expect(Math.abs((three[3 * k + n] as number) - wanted)).toBeLessThan(0.02);
    }
  }
});

// Source: CIE 15 with IEC 61966-2-1 and D65; D50 would give 54.29, 29.57 (two white points mixed).
test.each([
  [[255, 0, 0], 53.24],
  [[0, 0, 255], 32.3],
  [[255, 255, 0], 97.14],
  [[255, 255, 255], 100],
  [[119, 119, 119], 50.03],
  [[0, 0, 0], 0],
] as const)('L* of %j is %f', (colour, wanted) => {
  const { raster } = painted(1, 1, () => colour);
  expect(Math.abs((lightnessPlane(raster)[0] as number) - wanted)).toBeLessThan(0.01);
});

test('greys have no colour', () => {
  const { a, b } = labInPlace(painted(256, 1, (x) => [x, x, x]).raster);
  for (let i = 0; i < 256; i++) {
    expect(Math.abs(a[i] as number)).toBeLessThan(0.01);
    expect(Math.abs(b[i] as number)).toBeLessThan(0.01);
  }
});

test('the greyscale keeps L* and has no colour', () => {
  const grey = greyOf(picture.raster);
  const lightness = lightnessPlane(picture.raster);
  for (let i = 0; i < 2000; i++) {
    const [r, g, b, a] = grey.subarray(4 * i, 4 * i + 4) as unknown as number[];
    expect([g, b, a]).toEqual([r, r, 255]);
    const [shown] = expectedLab(r as number, r as number, r as number);
    expect(Math.abs(shown - (lightness[i] as number))).toBeLessThan(0.3); // half a code
  }
});

test('the reference shows the codes it came from', () => {
  const rgba = referenceRgba(picture.raster);
  for (let i = 0; i < 2000; i++) {
    expect([...rgba.subarray(4 * i, 4 * i + 3)]).toEqual([...(colours[i] ?? [])]);
  }
});

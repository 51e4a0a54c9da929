import { describe, expect, test } from 'vitest';
import { type Lab, labOfLinear, linearOfLab } from '../../../../app/core/colour/lab.ts';
import { type LightSpace, lightSpaces } from '../../../../app/core/compare/light-spaces.ts';
import {
  measuredRgba,
  measureSheet,
  pixelStates,
} from '../../../../app/core/compare/measured-sheet.ts';
import { sensed, unsensed, withoutCurve } from '../../../../app/core/paint/measure/camera.ts';
import { emptyRaster } from '../../../../app/core/raster/linear-raster.ts';

// A sheet of one colour is lit and photographed by the test's own reckoning, pixel by pixel, sensors first, curve last;
// what is measured has to be the colour again. Limits are (own).
const size = { width: 12, height: 8 };
const margin = 2;

interface Lit {
  readonly curve: number;
  readonly bright: readonly number[];
  readonly red: readonly number[];
  readonly blue: readonly number[];
}
const even: Lit = { curve: 0, bright: [0, 0, 0, 0, 0, 0], red: [0, 0, 0], blue: [0, 0, 0] };

/** The light that becomes `wanted` once the curve is taken back: sought by halves. */
function withCurve(wanted: number, curve: number): number {
  let [low, high] = [0, 1];
  for (let n = 0; n < 60; n++) {
    const middle = (low + high) / 2;
    if (withoutCurve(middle, curve) < wanted) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The photo of a sheet of one colour under a light. */
function photographed(lab: Lab, { curve, bright, red, blue }: Lit) {
  const raster = emptyRaster(size.width + 2 * margin, size.height + 2 * margin);
  const half = size.width / 2;
  const caught = sensed(linearOfLab(lab));
  const plane = ([one = 0, atX = 0, atY = 0]: readonly number[], x: number, y: number): number =>
    one + atX * x + atY * y;
  for (let row = -margin, i = 0; row < size.height + margin; row++)
    for (let column = -margin; column < size.width + margin; column++, i++) {
      const [x, y] = [(column + 0.5 - size.width / 2) / half, (row + 0.5 - size.height / 2) / half];
      const [, , , xx = 0, xy = 0, yy = 0] = bright;
      const level = Math.exp(plane(bright, x, y) + xx * x * x + xy * x * y + yy * y * y);
      const [r, g, b] = unsensed([
        caught[0] * level * Math.exp(plane(red, x, y)),
        caught[1] * level,
        caught[2] * level * Math.exp(plane(blue, x, y)),
      ]);
      raster.red[i] = withCurve(r, curve);
      raster.green[i] = withCurve(g, curve);
      raster.blue[i] = withCurve(b, curve);
    }
  return raster;
}

const measured = (raster: ReturnType<typeof photographed>, light: Lit) =>
  measureSheet(
    { raster, margin, size },
    {
      ...{ curve: light.curve, paperShare: 1, vergeShare: 1, doubt: 0 },
      space: lightSpaces[0] as LightSpace, // the sensors, in which the tests' light acts
      bright: Float64Array.from(light.bright),
      red: Float64Array.from(light.red),
      blue: Float64Array.from(light.blue),
    },
  );

describe('the colour of a sheet comes back', () => {
  const colours: readonly Lab[] = [
    [50, 0, 0],
    [40, 18, -12],
    [72, -10, 24],
  ];
  test.each<[string, Lit]>([
    ['in even daylight', even],
    ['in dim light', { ...even, bright: [-0.5, 0, 0, 0, 0, 0] }],
    ['with a fall-off to one side', { ...even, bright: [-0.4, 0.15, -0.2, 0, 0, 0] }],
    ['with a lamp over its middle', { ...even, bright: [-0.2, 0, 0, -0.2, 0.1, -0.15] }],
    ['in reddish light, redder to the right', { ...even, red: [0.05, 0.1, -0.06] }],
    ['in bluish light, bluer below', { ...even, blue: [-0.05, -0.04, 0.1] }],
    ['through a camera with a marked curve', { ...even, curve: 0.35 }],
    [
      'with all of it',
      {
        curve: 0.15,
        bright: [-0.3, 0.1, -0.1, -0.1, 0.05, -0.1],
        red: [0.05, 0.05, 0.03],
        blue: [-0.04, 0.06, -0.05],
      },
    ],
  ])('%s', (_, light) => {
    for (const lab of colours) {
      const { lightness, a, b, states } = measured(photographed(lab, light), light);
      expect(lightness).toHaveLength(size.width * size.height);
      for (const i of lightness.keys()) {
        expect(Math.abs(Number(lightness[i]) - lab[0])).toBeLessThan(0.1);
        expect(Math.abs(Number(a[i]) - lab[1])).toBeLessThan(0.2);
        expect(Math.abs(Number(b[i]) - lab[2])).toBeLessThan(0.2);
      }
      expect(states.every((state) => state === pixelStates.counts)).toBe(true);
    }
  });
});

describe('what can be said of a pixel', () => {
  const place = (column: number, row: number): number =>
    (row + margin) * (size.width + 2 * margin) + column + margin;
  const grey = () => photographed([60, 0, 0], even);

  test('off the photo it is missing, and nothing is measured there', () => {
    const raster = grey();
    raster.red[place(3, 2)] = Number.NaN;
    const { states } = measured(raster, even);
    expect([...states.entries()].filter(([, state]) => state !== pixelStates.counts)).toEqual([
      [2 * size.width + 3, pixelStates.missing],
    ]);
  });

  test.each(['red', 'green', 'blue'] as const)(
    'it is at its end where the %s of it is of code 252',
    (channel) => {
      const raster = grey();
      raster[channel][place(0, 0)] = 0.98;
      // Code 251 is a light of 0.965 (IEC 61966-2-1, 1999).
      raster[channel][place(1, 0)] = 0.96;
      const { states } = measured(raster, even);
      expect(states[0]).toBe(pixelStates.clipped);
      expect(states[1]).not.toBe(pixelStates.clipped);
    },
  );

  test('brighter than paper with its grain, L* 103, something shines', () => {
    const dim: Lit = { ...even, bright: [-0.3, 0, 0, 0, 0, 0] };
    const raster = photographed([60, 0, 0], dim);
    const white = (lightness: number): number => Math.exp(-0.3) * ((lightness + 16) / 116) ** 3; // ISO/CIE 11664-4, 2019
    for (const [n, lightness] of [102.5, 103.5].entries())
      for (const plane of [raster.red, raster.green, raster.blue])
        plane[place(n, 0)] = white(lightness);
    const { states } = measured(raster, dim);
    expect([...states.slice(0, 3)]).toEqual([
      pixelStates.counts,
      pixelStates.glare,
      pixelStates.counts,
    ]);
    // What is at its end stays so, however bright it is.
    for (const plane of [raster.red, raster.green, raster.blue]) plane[place(0, 0)] = 0.99;
    expect(measured(raster, dim).states[0]).toBe(pixelStates.clipped);
  });

  test('strong light of one colour is measured beyond the table as within it', () => {
    const raster = grey();
    const [red, green, blue] = [0.9, -0.02, 0.01];
    raster.red[place(0, 0)] = red;
    raster.green[place(0, 0)] = green;
    raster.blue[place(0, 0)] = blue;
    const { lightness, a, b } = measured(raster, even);
    const wanted = labOfLinear(red, 0, blue);
    expect(Math.abs(Number(lightness[0]) - wanted[0])).toBeLessThan(0.3);
    expect(Math.abs(Number(a[0]) - wanted[1])).toBeLessThan(0.6);
    expect(Math.abs(Number(b[0]) - wanted[2])).toBeLessThan(0.6);
  });
});

describe('the measured sheet as it is looked at', () => {
  const sheet = {
    lightness: Float32Array.of(50, 50, 50),
    a: Float32Array.of(0, 0, 0),
    b: Float32Array.of(0, 0, 0),
    states: Uint8Array.of(pixelStates.counts, pixelStates.missing, pixelStates.counts),
  };
  // L* 50 is code 119, L* 60 code 145, L* 100 code 255 (IEC 61966-2-1, 1999, with ISO/CIE 11664-4).
  test('is opaque; what is off the photo is the grey round every picture', () => {
    const light = { ...sheet, lightness: Float32Array.of(100, 0, 60) };
    expect([...measuredRgba(light)]).toEqual(
      [255, 119, 145].flatMap((code) => [code, code, code, 255]),
    );
  });

  test('a shift moves the pixels it names and no other, nor what is off the photo', () => {
    const shifted = measuredRgba(sheet, { by: [10, 0, 0], holds: (pixel) => pixel < 2 });
    expect([...shifted]).toEqual([145, 119, 119].flatMap((code) => [code, code, code, 255]));
    const [red, green, blue] = measuredRgba(sheet, { by: [0, 20, -30], holds: () => true });
    expect(Number(red)).toBeGreaterThan(Number(green));
    expect(Number(blue)).toBeGreaterThan(Number(red));
  });
});

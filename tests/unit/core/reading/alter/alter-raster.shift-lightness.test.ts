import { expect, test } from 'vitest';
import { colourDifference } from '../../../../../app/core/colour/ciede2000.ts';
import { p3ToSrgb, srgbToP3 } from '../../../../../app/core/colour/display-p3.ts';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { luminanceOfLinear } from '../../../../../app/core/colour/lightness.ts';
import { decodeSrgb } from '../../../../../app/core/colour/srgb.ts';
import { runToEnd } from '../../../../../app/core/numeric/run-to-end.ts';
import {
  emptyRaster,
  type LinearRaster,
  labInPlace,
  lightnessPlane,
  setLuminance,
} from '../../../../../app/core/raster/linear-raster.ts';
import { alterRaster } from '../../../../../app/core/reading/alter/alter-raster.ts';
import type { Alteration, Change } from '../../../../../app/core/reference/photo-stroke.ts';
import { labOfLinear } from '../../../../support/reading/linear-of-lab.ts';
import { copyOf, oval, rasterOf, sameRaster } from '../../../../support/reading/plain-raster.ts';
import { seeded } from '../../../../support/reading/seeded.ts';

const [width, height] = [200, 160];
const pxPerMm = 2;

const round = (change: Change): Alteration => ({
  change,
  path: oval([0.5, 0.5], 0.3, 0.3),
  brush: 0,
});

const middle = 80 * width + 100;

test.each([
  ['lighter', [50, 0, 0]],
  ['darker', [50, 0, 0]],
  ['lighter', [45, 40, 25]],
  ['darker', [45, 40, 25]],
  ['lighter', [60, -35, 30]],
  ['darker', [70, 0, -30]],
  ['lighter', [3, 0, 0]],
  ['darker', [12, 5, 5]],
] as const)('one value %s moves L* of %j by 10, its hue kept', (change, lab) => {
  const raster = rasterOf(width, height, () => lab as Lab);
  runToEnd(alterRaster(raster, [round(change)], pxPerMm));
  const [l, a, b] = labOfLinear(
    raster.red[middle] as number,
    raster.green[middle] as number,
    raster.blue[middle] as number,
  );
  const by = change === 'lighter' ? 10 : -10;
  expect(Math.abs(l - lab[0] - by)).toBeLessThan(0.3);
  if (Math.hypot(lab[1], lab[2]) > 20) {
    expect(Math.abs(Math.atan2(b, a) - Math.atan2(lab[2], lab[1]))).toBeLessThan(0.08);
    expect(Math.hypot(a, b)).toBeGreaterThan(0.75 * Math.hypot(lab[1], lab[2]));
  }
});

test('at the ends it goes as far as there is room, without colour gone astray', () => {
  const light = rasterOf(width, height, (x) => (x < 100 ? [96, 0, 0] : [80, 5, 75]));
  runToEnd(alterRaster(light, [round('lighter')], pxPerMm));
  const plane = lightnessPlane(light);
  expect(plane[middle - 20]).toBeCloseTo(100, 1);
  expect(plane[middle + 20]).toBeCloseTo(90, 1); // yellow gives up colour, not value
  const dark = rasterOf(width, height, () => [4, 0, 0]);
  runToEnd(alterRaster(dark, [round('darker')], pxPerMm));
  expect(lightnessPlane(dark)[middle]).toBeCloseTo(0, 2);
  const black = rasterOf(width, height, () => [0, 0, 0]);
  runToEnd(alterRaster(black, [round('lighter')], pxPerMm));
  expect(lightnessPlane(black)[middle]).toBeCloseTo(10, 1);
  expect(black.red[middle]).toBe(black.blue[middle]);
});

test('noise in near-black does not turn into colours', () => {
  const raster = rasterOf(width, height, () => [50, 0, 0]);
  raster.red.fill(0.0006);
  raster.green.fill(0.0001);
  raster.blue.fill(0.0001);
  runToEnd(alterRaster(raster, [round('lighter')], pxPerMm));
  const lab = labOfLinear(
    raster.red[middle] as number,
    raster.green[middle] as number,
    raster.blue[middle] as number,
  );
  expect(Math.hypot(lab[1], lab[2])).toBeLessThan(12);
});

test('full inside, untouched outside to the last bit, without a step between', () => {
  const raster = rasterOf(width, height, (x, y) => [40 + (x % 7) + (y % 5), 8, -6]);
  const before = copyOf(raster);
  runToEnd(alterRaster(raster, [round('lighter')], pxPerMm));
  const [was, now] = [lightnessPlane(before), lightnessPlane(raster)];
  const gained = (x: number): number =>
    (now[80 * width + x] as number) - (was[80 * width + x] as number);
  // The area ends at x = 100 + 60; its edge is soft over 3 mm, 6 px at most.
  expect(gained(155)).toBeCloseTo(10, 2);
  const away = (x: number, y: number): number => Math.hypot((x - 100) / 60, (y - 80) / 48);
  expect(sameRaster(raster, before, (x, y) => away(x, y) > 1.08)).toBe(true);
  for (let x = 150; x < 170; x++) {
    expect(gained(x) - gained(x + 1)).toBeGreaterThanOrEqual(-1e-3);
    expect(gained(x) - gained(x + 1)).toBeLessThan(4.5);
  }
});

test('over the border of the picture it is full to the last pixel', () => {
  const raster = rasterOf(width, height, () => [50, 0, 0]);
  const whole: Alteration = { change: 'darker', path: oval([0.5, 0.5], 0.9, 0.9), brush: 0 };
  runToEnd(alterRaster(raster, [whole], pxPerMm));
  expect(lightnessPlane(raster).every((lightness) => Math.abs(lightness - 40) < 0.05)).toBe(true);
});

test('strokes add up; there and back comes out where it was', () => {
  const raster = rasterOf(width, height, () => [50, 10, -15]);
  runToEnd(alterRaster(raster, [round('darker'), round('darker')], pxPerMm));
  expect(lightnessPlane(raster)[middle]).toBeCloseTo(30, 1);
  runToEnd(alterRaster(raster, [round('lighter'), round('lighter')], pxPerMm));
  expect(lightnessPlane(raster).every((lightness) => Math.abs(lightness - 50) < 0.05)).toBe(true);
});

test('what is laid over a place left out stands; what was laid before it goes with it', () => {
  const made = () =>
    rasterOf(width, height, (x, y) => (Math.hypot(x - 100, y - 80) < 30 ? [20, 0, 0] : [60, 0, 0]));
  const after = made();
  runToEnd(alterRaster(after, [round('leave-out'), round('darker')], pxPerMm));
  expect(lightnessPlane(after)[middle]).toBeCloseTo(50, 1);
  const small: Alteration = { ...round('lighter'), path: oval([0.5, 0.5], 0.1, 0.1) };
  const before = made();
  runToEnd(alterRaster(before, [small, round('leave-out')], pxPerMm));
  expect(lightnessPlane(before)[middle]).toBeCloseTo(60, 1);
});

test('no alterations: nothing is touched', () => {
  const raster = rasterOf(width, height, (x) => [x / 2, 5, 5]);
  const before = copyOf(raster);
  runToEnd(alterRaster(raster, [], pxPerMm));
  expect(sameRaster(raster, before)).toBe(true);
});

/** Display P3's orange 255, 120, 0, in linear light of the sRGB primaries. */
const orangeRaster = (): LinearRaster => {
  const raster = emptyRaster(width, height);
  raster.red.fill(1);
  raster.green.fill(decodeSrgb(120 / 255));
  p3ToSrgb(raster, 0, width * height);
  return raster;
};

// Lighter, an orange this strong has only the way to white: its hue turns as one of sRGB's does too.
test.each([
  ['lighter', 0.35, 7],
  ['darker', 0.02, 3],
] as const)(
  'a colour beyond sRGB one value %s: hue within %f rad, no step between neighbours over dE %i',
  (change, mostTurned, largestStep) => {
    const raster = orangeRaster();
    expect(raster.red[middle]).toBeGreaterThan(1);
    expect(raster.blue[middle]).toBeLessThan(0);
    const labAt = ({ red, green, blue }: LinearRaster, i: number): Lab =>
      labOfLinear(red[i] as number, green[i] as number, blue[i] as number);
    const [l, a, b] = labAt(raster, middle);
    runToEnd(alterRaster(raster, [round(change)], pxPerMm));
    const [l2, a2, b2] = labAt(raster, middle);
    expect(Math.abs(l2 - l - (change === 'lighter' ? 10 : -10))).toBeLessThan(0.3);
    expect(Math.abs(Math.atan2(b2, a2) - Math.atan2(b, a))).toBeLessThan(mostTurned);
    const steps: number[] = []; // from the middle out to the right border
    for (let x = 101; x < width; x++) {
      const [one, other] = [labAt(raster, 80 * width + x - 1), labAt(raster, 80 * width + x)];
      steps.push(colourDifference(one, other));
    }
    expect(Math.max(...steps)).toBeLessThan(largestStep);
    expect(labAt(raster, 80 * width + width - 1)).toEqual([l, a, b]);
    expect(lightnessPlane(raster).every(Number.isFinite)).toBe(true);
    const planes = labInPlace(raster);
    expect([planes.a, planes.b].every((plane) => plane.every(Number.isFinite))).toBe(true);
  },
);

test('any colour of Display P3, as light or dark as wanted, stays one of Display P3', () => {
  const random = seeded(11);
  for (let i = 0; i < 5000; i++) {
    const p3 = [random(), random(), random()].map((light) =>
      light < 0.2 ? 0 : light > 0.8 ? 1 : light,
    );
    const raster = emptyRaster(1, 1);
    raster.red[0] = p3[0] as number;
    raster.green[0] = p3[1] as number;
    raster.blue[0] = p3[2] as number;
    p3ToSrgb(raster, 0, 1);
    const luminance = random();
    setLuminance(raster, 0, luminance);
    const [red, green, blue] = [raster.red[0], raster.green[0], raster.blue[0]];
    expect(luminanceOfLinear(red, green, blue)).toBeCloseTo(luminance, 5);
    srgbToP3(raster, 0, 1);
    for (const [light] of [raster.red, raster.green, raster.blue]) {
      expect(light).toBeGreaterThan(-1e-6);
      expect(light).toBeLessThan(1 + 1e-6);
    }
  }
});

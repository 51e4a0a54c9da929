import { describe, expect, test } from 'vitest';
import { p3ToSrgb } from '../../../../../app/core/colour/display-p3.ts';
import type { Lab, Point } from '../../../../../app/core/colour/lab.ts';
import { decodeSrgb } from '../../../../../app/core/colour/srgb.ts';
import { runToEnd } from '../../../../../app/core/numeric/run-to-end.ts';
import { type LinearRaster, lightnessPlane } from '../../../../../app/core/raster/linear-raster.ts';
import { alterRaster } from '../../../../../app/core/reading/alter/alter-raster.ts';
import type { Alteration } from '../../../../../app/core/reference/photo-stroke.ts';
import { copyOf, oval, rasterOf, sameRaster } from '../../../../support/reading/plain-raster.ts';
import { seeded } from '../../../../support/reading/seeded.ts';

const [width, height] = [320, 240];
const pxPerMm = 2;

const leaveOut = (path: readonly Point[], brush = 0): Alteration => ({
  change: 'leave-out',
  path,
  brush,
});

const isThing = (x: number, y: number): boolean => (x - 160) ** 2 + (y - 120) ** 2 < 40 ** 2;

/** What lies round a dark red thing. */
const withThing = (ground: (x: number, y: number) => Lab): LinearRaster =>
  rasterOf(width, height, (x, y) => (isThing(x, y) ? [20, 40, 20] : ground(x, y)));

/** Largest difference in L* from the ground alone. */
function worst(altered: LinearRaster, ground: (x: number, y: number) => Lab): number {
  const plane = lightnessPlane(altered);
  return plane.reduce((most, lightness, i) => {
    const [expected] = ground(i % width, Math.floor(i / width));
    return Math.max(most, Math.abs(lightness - expected));
  }, 0);
}

const tight = oval([0.5, 0.5], 40 / width, 40 / height);

describe('a thing left out', () => {
  test('of flat surroundings: flat', () => {
    const flat = (): Lab => [70, -10, 15];
    const raster = withThing(flat);
    runToEnd(alterRaster(raster, [leaveOut(tight)], pxPerMm));
    expect(worst(raster, flat)).toBeLessThan(0.1);
  });

  test.each([
    ['across', (x: number): Lab => [30 + (50 * x) / width, 0, 0]],
    ['down', (_: number, y: number): Lab => [80 - (50 * y) / height, -5, -20]],
    ['aslant', (x: number, y: number): Lab => [35 + (20 * x) / width + (25 * y) / height, 5, 30]],
  ])('of a gradient %s: the gradient goes on', (_, ground) => {
    const raster = withThing(ground);
    runToEnd(alterRaster(raster, [leaveOut(tight)], pxPerMm));
    expect(worst(raster, ground)).toBeLessThan(2);
  });

  test('by the brush in two strokes side by side: nothing of it is left between them', () => {
    const flat = (): Lab => [70, 0, 0];
    const strokes = [
      [0.4, 0.44],
      [0.4, 0.56],
    ].map(([left = 0, y = 0]) =>
      leaveOut(
        [
          [left, y],
          [0.6, y],
        ],
        0.2,
      ),
    );
    const raster = withThing(flat);
    runToEnd(alterRaster(raster, strokes, pxPerMm));
    expect(worst(raster, flat)).toBeLessThan(0.1);
  });

  test('that touches the border of the picture', () => {
    const ground = (x: number, y: number): Lab => [40 + (20 * x) / width + (10 * y) / height, 0, 0];
    const raster = rasterOf(width, height, (x, y) =>
      y > 190 && x < 60 ? [5, 0, 0] : ground(x, y),
    );
    const corner: Point[] = [
      [-0.05, 0.78],
      [0.2, 0.78],
      [0.2, 1.05],
      [-0.05, 1.05],
    ];
    runToEnd(alterRaster(raster, [leaveOut(corner)], pxPerMm));
    // Nothing is known beyond the border, so a gradient flattens out towards it.
    expect(worst(raster, ground)).toBeLessThan(6);
    const flat = rasterOf(width, height, (x, y) => (y > 190 && x < 60 ? [5, 0, 0] : [60, 0, 0]));
    runToEnd(alterRaster(flat, [leaveOut(corner)], pxPerMm));
    expect(worst(flat, () => [60, 0, 0])).toBeLessThan(0.1);
  });

  test('within what surrounds it: never lighter or darker, never out of range', () => {
    const random = seeded(5);
    const raster = withThing(() => [40 + 40 * random(), 60 * random() - 30, 60 * random() - 30]);
    runToEnd(alterRaster(raster, [leaveOut(oval([0.3, 0.4], 0.28, 0.35))], pxPerMm));
    for (const plane of [raster.red, raster.green, raster.blue]) {
      expect(plane.every((light) => light >= 0 && light <= 1)).toBe(true);
    }
  });

  test('outside of it nothing changes, to the last bit', () => {
    const random = seeded(9);
    const raster = withThing(() => [30 + 60 * random(), 10, 10]);
    const before = copyOf(raster);
    runToEnd(alterRaster(raster, [leaveOut(tight)], pxPerMm));
    const away = (x: number, y: number): number => Math.hypot(x - 160, y - 120);
    expect(sameRaster(raster, before, (x, y) => away(x, y) > 40 + 2 * pxPerMm)).toBe(true);
    expect(sameRaster(raster, before, (x, y) => away(x, y) < 40)).toBe(false);
  });

  test('the whole picture circled: nothing to take it from, so it stays', () => {
    const raster = withThing((x) => [30 + x / 10, 0, 0]);
    const before = copyOf(raster);
    runToEnd(alterRaster(raster, [leaveOut(oval([0.5, 0.5], 0.8, 0.8))], pxPerMm));
    expect(sameRaster(raster, before)).toBe(true);
  });

  test.each([
    [1, 1],
    [1, 40],
    [40, 1],
    [7, 5],
  ])('a picture of %i x %i px gives numbers', (wide, high) => {
    const raster = rasterOf(wide, high, (x, y) => [20 + x + y, 0, 0]);
    runToEnd(alterRaster(raster, [leaveOut([[0.5, 0.5]], 0.3), leaveOut([[2, 2]], 0.1)], 0.1));
    expect(raster.red.every((light) => light >= 0 && light <= 1)).toBe(true);
  });
});

test.each([
  [{ path: [], brush: 0 }],
  [{ path: [[Number.NaN, 0.5] as const], brush: 0.1 }],
  [{ path: [[0.5, 0.5] as const], brush: -1 }],
])('a stroke that is none is refused with a sentence', (stroke) => {
  const raster = rasterOf(4, 4, () => [50, 0, 0]);
  const pieces = alterRaster(raster, [{ change: 'lighter', ...stroke }], 1);
  expect(() => runToEnd(pieces)).toThrow(/Take it back and draw it anew/);
});

// In linear light of sRGB the orange has red over 1 and blue under 0; of the dark green, half as light as
// Display P3's own, no light is over 1 and red and blue are under 0.
test.each([
  ['orange 255, 120, 0', [1, decodeSrgb(120 / 255), 0]],
  ['dark green', [0, 0.5, 0]],
] as const)(
  'a thing in surroundings beyond sRGB, %s: they go on, as strong as they are',
  (_, p3) => {
    const raster = withThing(() => [50, 0, 0]);
    for (let y = 0, i = 0; y < height; y++) {
      for (let x = 0; x < width; x++, i++) {
        if (isThing(x, y)) continue;
        [raster.red[i], raster.green[i], raster.blue[i]] = p3;
        p3ToSrgb(raster, i, i + 1);
      }
    }
    const ground = [raster.red[0], raster.green[0], raster.blue[0]] as const;
    expect(Math.min(...(ground as readonly number[]))).toBeLessThan(-0.01);
    runToEnd(alterRaster(raster, [leaveOut(tight)], pxPerMm));
    [raster.red, raster.green, raster.blue].forEach((plane, c) => {
      expect(plane.every((light) => Math.abs(light - (ground[c] as number)) < 1e-4)).toBe(true);
    });
  },
);

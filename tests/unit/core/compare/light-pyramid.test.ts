import { describe, expect, test } from 'vitest';
import { lightPlane, lightPyramid, readPhoto } from '../../../../app/core/compare/light-pyramid.ts';
import { emptyRaster } from '../../../../app/core/raster/linear-raster.ts';

/** A grey raster, its light the cube of what is to be seen of it. */
function seenAs(width: number, height: number, at: (x: number, y: number) => number) {
  const raster = emptyRaster(width, height);
  for (let i = 0; i < width * height; i++) {
    const light = at(i % width, Math.floor(i / width)) ** 3;
    for (const plane of [raster.red, raster.green, raster.blue]) plane[i] = light;
  }
  return raster;
}
const moved = (x: number, y: number, scale = 1) =>
  Float64Array.of(scale, 0, x, 0, scale, y, 0, 0, 1);
const numbers = (plane: Float32Array): number[] => [...plane].map((v) => Number(v.toFixed(4)));

test('as light as the eye has it: the cube root of luminance, and none where a colour lies beyond what there is', () => {
  const raster = emptyRaster(3, 1);
  raster.red.set([0.125, 1, -1]);
  raster.green.set([0.125, 0, -1]);
  raster.blue.set([0.125, 0, -1]);
  // Source: IEC 61966-2-1, 1999: red has 0.2126 of the luminance.
  const wanted = [0.5, Math.cbrt(0.2126), 0];
  for (const [i, seen] of lightPlane(raster).plane.entries())
    expect(seen).toBeCloseTo(wanted[i] ?? Number.NaN, 3);
});

/** As the eye has it of so many times reduced: light by the first two by two, what is seen of it from then on. */
function reducedBy(
  level: number,
  at: (x: number, y: number) => number,
  x: number,
  y: number,
): number {
  if (level === 0) return at(x, y);
  const four = [0, 1].flatMap((dy) =>
    [0, 1].map((dx) => reducedBy(level - 1, at, 2 * x + dx, 2 * y + dy)),
  );
  const power = level === 1 ? 3 : 1;
  return (four.reduce((sum, seen) => sum + seen ** power, 0) / 4) ** (1 / power);
}

test('halves are means of two by two; an odd last row and column are left out', () => {
  const slope = (x: number, y: number): number => (x + 2 * y) / 300;
  const { most, at } = lightPyramid(seenAs(70, 67, slope));
  const levels = Array.from({ length: most + 1 }, (_, level) => at(level));
  expect(levels.map(({ width, height }) => `${width} x ${height}`)).toEqual(
    '70 x 67,35 x 33,17 x 16,8 x 8,4 x 4,2 x 2'.split(','),
  );
  for (const [n, { plane, width, height }] of levels.entries()) {
    for (const [x, y] of [
      [0, 0],
      [width - 1, 0],
      [0, height - 1],
      [width - 1, height - 1],
    ] as const) {
      expect(plane[y * width + x]).toBeCloseTo(reducedBy(n, slope, x, y), 5);
    }
  }
});

describe('the photo under every pixel of a sheet', () => {
  const striped = (x: number, y: number): number => (x + 50 * (y % 2)) / 100;
  const photo = lightPyramid(seenAs(40, 32, striped));

  test('at the same size is the photo, px by px', () => {
    const seen = readPhoto(photo, moved(5, 4), { width: 3, height: 2 });
    expect(numbers(seen)).toEqual([0.05, 0.06, 0.07, 0.55, 0.56, 0.57]);
  });

  test('between four px is their mean by nearness', () => {
    const [seen] = readPhoto(photo, moved(5.25, 4.5), { width: 1, height: 1 });
    expect(seen).toBeCloseTo((5.25 + 25) / 100, 5);
    const [higher] = readPhoto(photo, moved(5, 4.1), { width: 1, height: 1 });
    expect(higher).toBeCloseTo((5 + 5) / 100, 5);
  });

  test('off the photo is nothing; within half a px of its border it goes on as it was going', () => {
    const seen = readPhoto(photo, moved(-2, -2), { width: 44, height: 36 });
    const isNone = (x: number, y: number): boolean => Number.isNaN(seen[44 * y + x]);
    expect([isNone(1, 5), isNone(2, 5), isNone(41, 5), isNone(42, 5)]).toEqual([
      true,
      false,
      false,
      true,
    ]);
    expect([isNone(5, 1), isNone(5, 2), isNone(5, 33), isNone(5, 34)]).toEqual([
      true,
      false,
      false,
      true,
    ]);
    expect(seen[44 * 2 + 41]).toBeCloseTo(0.39, 5); // the last column of the first row
    expect(seen[44 * 33 + 2]).toBeCloseTo(0.5, 5); // the first of the last row
  });

  test('four times as fine is read from what has been halved twice', () => {
    const seen = readPhoto(photo, moved(0, 0, 4), { width: 10, height: 8 });
    expect(seen[0]).toBeCloseTo(reducedBy(2, striped, 0, 0), 5);
    expect(seen[10 * 3 + 6]).toBeCloseTo(reducedBy(2, striped, 6, 3), 5);
    // And what is coarser than the photo from the photo itself.
    const close = readPhoto(photo, moved(6, 6, 0.25), { width: 4, height: 4 });
    expect(close[0]).toBeCloseTo((6 + 0.125 - 0.5 + 50 * 0.375) / 100, 5);
  });

  test('aslant: w divides', () => {
    const aslant = Float64Array.of(1, 0, 8, 0, 1, 8, 0.05, 0, 1);
    const [seen] = readPhoto(photo, aslant, { width: 1, height: 1 });
    const w = 1 + 0.05 * 0.5;
    const [x, y] = [8.5 / w - 0.5, 8.5 / w - 0.5];
    expect(seen).toBeCloseTo((x + 50 * (8 - y)) / 100, 5);
  });
});

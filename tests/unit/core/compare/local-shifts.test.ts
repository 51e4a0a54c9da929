import { describe, expect, test } from 'vitest';
import { align, alignmentTarget, likenessOf } from '../../../../app/core/compare/align.ts';
import { project } from '../../../../app/core/compare/homography.ts';
import { lightPyramid } from '../../../../app/core/compare/light-pyramid.ts';
import { localShifts } from '../../../../app/core/compare/local-shifts.ts';
import { emptyRaster } from '../../../../app/core/raster/linear-raster.ts';

/** A picture of soft waves that do not come again within the sheet, at a place in px. */
const picture = (x: number, y: number): number =>
  0.4 +
  0.12 * Math.sin(0.31 * x + 0.002 * x * y) +
  0.1 * Math.cos(0.27 * y - 0.0015 * x * x) +
  0.08 * Math.sin(0.19 * (x + y) + 1);

function rasterOf(width: number, height: number, at: (x: number, y: number) => number) {
  const raster = emptyRaster(width, height);
  for (let i = 0; i < width * height; i++) {
    const light = Math.max(0, at((i % width) + 0.5, Math.floor(i / width) + 0.5)) ** 3;
    for (const plane of [raster.red, raster.green, raster.blue]) plane[i] = light;
  }
  return raster;
}

const [width, height] = [96, 72];
const target = alignmentTarget(rasterOf(width, height, picture), 0.1);
/** A photo with 20 px round the sheet, the picture read where `from` says. */
const photoOf = (from: (x: number, y: number) => readonly [number, number]) =>
  lightPyramid(rasterOf(width + 40, height + 40, (x, y) => picture(...from(x - 20, y - 20))));
const at = (dx: number, dy: number) => Float64Array.of(1, 0, 20 + dx, 0, 1, 20 + dy, 0, 0, 1);
const plain = photoOf((x, y) => [x, y]);

/** Where the sheet's corners come to lie, less where they are, px. */
const cornersOff = (toPhoto: Float64Array, truth: Float64Array): number =>
  Math.max(
    ...[
      [0, 0],
      [width, 0],
      [width, height],
      [0, height],
    ].map(([x = 0, y = 0]) => {
      const [[u, v], [p, q]] = [project(toPhoto, x, y), project(truth, x, y)];
      return Math.hypot(u - p, v - q);
    }),
  );

// Limits are (own).
describe('a photo laid on the expected sheet', () => {
  test('is like it where it lies right, less where it does not', () => {
    const right = likenessOf(plain, at(0, 0), target);
    expect(right).toBeGreaterThan(0.99);
    expect(likenessOf(plain, at(3, 0), target)).toBeLessThan(right - 0.1);
    expect(likenessOf(plain, at(0, 3), target)).toBeLessThan(right - 0.05);
  });

  test('what lies off the photo is no proof: likeness is less by that share', () => {
    // A third of the sheet lies beside a photo cut off there.
    const cut = lightPyramid(rasterOf(20 + 64, height + 40, (x, y) => picture(x - 20, y - 20)));
    const likeness = likenessOf(cut, at(0, 0), target);
    expect(likeness).toBeGreaterThan(0.6);
    expect(likeness).toBeLessThan(0.68);
  });

  test.each([
    ['moved', Float64Array.of(1, 0, 22.2, 0, 1, 18.4, 0, 0, 1)],
    ['turned', Float64Array.of(0.999, -0.035, 21, 0.035, 0.999, 18.6, 0, 0, 1)],
    ['larger', Float64Array.of(1.04, 0, 18, 0, 1.03, 18.5, 0, 0, 1)],
    ['aslant', Float64Array.of(1.03, 0.01, 19, 0.01, 1.02, 19.5, 3e-4, -2e-4, 1)],
  ])('that is %s is found within a third of a px', (_, truth) => {
    // The picture of the sheet at (x, y) lies in the photo where the truth takes it.
    const photo = lightPyramid(
      rasterOf(width + 40, height + 40, (u, v) => {
        const [h0, h1, h2, h3, h4, h5, h6, h7] = truth as unknown as number[] as [
          number,
          number,
          number,
          number,
          number,
          number,
          number,
          number,
        ];
        // Two equations in x and y, by Cramer's rule.
        const [a, b, c, d] = [h0 - u * h6, h1 - u * h7, h3 - v * h6, h4 - v * h7];
        const [p, q] = [u - h2, v - h5];
        const det = a * d - b * c;
        return picture((p * d - b * q) / det, (a * q - c * p) / det);
      }),
    );
    const found = align(photo, at(0, 0), target, 20);
    expect(cornersOff(found.toPhoto, truth)).toBeLessThan(0.34);
    expect(found.likeness).toBeGreaterThan(0.98);
  });

  test('darker and flatter as a whole it is found alike', () => {
    const dim = lightPyramid(
      rasterOf(width + 40, height + 40, (x, y) => 0.1 + 0.6 * picture(x - 22, y - 19)),
    );
    const found = align(dim, at(0, 0), target, 20);
    expect(cornersOff(found.toPhoto, at(2, -1))).toBeLessThan(0.34);
  });

  test('an even photo says nothing: in doubt, and unlike', () => {
    const even = lightPyramid(rasterOf(width + 40, height + 40, () => 0.5));
    expect(Math.abs(align(even, at(0, 0), target, 5).likeness)).toBeLessThan(0.1);
  });
});

describe('parts of the sheet', () => {
  test('all lie where they should: none astray, nothing to mend', () => {
    const { astray, mended } = localShifts(plain, at(0, 0), target);
    expect(astray).toBe(0);
    expect(cornersOff(mended ?? at(99, 99), at(0, 0))).toBeLessThan(0.3);
  });

  test.each([
    [3, 0],
    [0, -3],
    [-2, 4],
  ])('moved as a whole by %i, %i px: all astray, and mended', (dx, dy) => {
    const { astray, mended } = localShifts(plain, at(dx, dy), target);
    expect(astray).toBeGreaterThan(0.9);
    expect(cornersOff(mended ?? at(99, 99), at(0, 0))).toBeLessThan(0.8);
  });

  test('a right half that lies 4 px lower: half of them are astray', () => {
    const torn = photoOf((x, y) => [x, x > width / 2 ? y - 4 : y]);
    const { astray } = localShifts(torn, at(0, 0), target);
    expect(astray).toBeGreaterThan(0.3);
    expect(astray).toBeLessThan(0.7);
  });

  test('stretched by 6 % they want to go outwards, and it is mended', () => {
    const wide = photoOf((x, y) => [
      width / 2 + (x - width / 2) / 1.06,
      height / 2 + (y - height / 2) / 1.06,
    ]);
    const truth = Float64Array.of(1.06, 0, 20 - 0.03 * width, 0, 1.06, 20 - 0.03 * height, 0, 0, 1);
    const before = cornersOff(at(0, 0), truth);
    const { mended } = localShifts(wide, at(0, 0), target);
    expect(cornersOff(mended ?? at(99, 99), truth)).toBeLessThan(0.4 * before);
  });

  test('a sheet with a picture in one corner alone tells too little to be mended', () => {
    const corner = (x: number, y: number): number => (x < 26 && y < 26 ? picture(x, y) : 0.4);
    const sparse = alignmentTarget(rasterOf(width, height, corner), 0.1);
    const photo = lightPyramid(rasterOf(width + 40, height + 40, (x, y) => corner(x - 20, y - 20)));
    const { astray, mended } = localShifts(photo, at(0, 0), sparse);
    expect(mended).toBeNull();
    expect(astray).toBe(0);
  });
});

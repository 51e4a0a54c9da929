import { describe, expect, test } from 'vitest';
import {
  type ColourBytes,
  colourBinAt,
  colourGrid,
  learnedFavour,
  subjectPlanes,
} from '../../../../../app/core/reading/subject/subject-colours.ts';

const bytesOf = (
  width: number,
  height: number,
  codes: number[],
  a: number[],
  b: number[],
): ColourBytes => ({
  size: { width, height },
  lightness: Uint8ClampedArray.from(codes),
  a: Int8Array.from(a),
  b: Int8Array.from(b),
});

test('colours in a byte: L* x 2.55, a* and b* held within -128..127', () => {
  const planes = {
    lightness: Float32Array.of(0, 40, 100),
    a: Float32Array.of(-200, 1.6, 130),
    b: Float32Array.of(0, -3.4, 127),
  };
  const found = subjectPlanes(planes, Float32Array.of(20, 60, 101), { width: 3, height: 1 });
  expect([...found.lightness]).toEqual([0, 102, 255]);
  expect([...found.plain]).toEqual([51, 153, 255]);
  expect([[...found.a], [...found.b]]).toEqual([
    [-128, 2, 127],
    [0, -3, 127],
  ]);
});

describe('a grid of cells', () => {
  const picture = bytesOf(
    3,
    3,
    [10, 20, 100, 30, 40, 102, 7, 9, 200],
    [4, 8, 1, 12, 16, 3, 5, 7, -20],
    [-4, -8, 1, -12, -16, 3, 5, 7, 20],
  );

  test('of one px each is the picture itself', () => {
    const grid = colourGrid(picture, 3);
    expect(grid.cellPx).toBe(1);
    expect([...grid.lightness]).toEqual([...picture.lightness]);
    expect([...grid.a]).toEqual([...picture.a]);
    expect([...grid.b]).toEqual([...picture.b]);
  });

  test('holds the means of its cells, also of those cut off at the border', () => {
    const grid = colourGrid(picture, 2);
    expect(grid).toMatchObject({ cellPx: 2, size: { width: 2, height: 2 } });
    expect([...grid.lightness]).toEqual([25, 101, 8, 200]);
    expect([...grid.a]).toEqual([10, 2, 6, -20]);
    expect([...grid.b]).toEqual([-10, 2, 6, 20]);
  });

  test('is at most so long', () => {
    const wide = bytesOf(9, 2, new Array(18).fill(5), new Array(18).fill(0), new Array(18).fill(0));
    expect(colourGrid(wide, 4)).toMatchObject({ cellPx: 3, size: { width: 3, height: 1 } });
    expect(colourGrid(wide, 9).size.width).toBe(9);
  });
});

test('near colours share a bin: 4 L*, 5 of a* and b*', () => {
  const bin = (code: number, a: number, b: number) =>
    colourBinAt(bytesOf(1, 1, [code], [a], [b]), 0);
  expect(bin(0, -128, -128)).toBe(0);
  expect(bin(10, -124, -124)).toBe(0); // 3.9 L*
  expect(bin(0, -128, -123)).toBe(1);
  expect(bin(0, -123, -128)).toBe(52); // 256 values in fives: 52 bins a side
  expect(bin(11, -128, -128)).toBe(52 * 52);
});

test('a colour speaks for the side it is seen on, within 4, and for none where it is on both alike', () => {
  const [one, other] = [1000, 60_000];
  const favour = learnedFavour(
    Int32Array.of(one, other),
    Uint8Array.of(1, 0),
    Float32Array.of(1, 1),
  );
  expect([favour[one], favour[other], favour[0]]).toEqual([4, -4, 0]);
  const even = learnedFavour(Int32Array.of(one, one), Uint8Array.of(1, 0), Float32Array.of(3, 1));
  expect(even[one]).toBeCloseTo(0, 6); // each side's density sums to 1
});

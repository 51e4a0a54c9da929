import { expect, test } from 'vitest';
import {
  eachMarkPixel,
  type MarkGrid,
  paintMarks,
  scaledMarks,
} from '../../../../app/core/raster/paint-marks.ts';

const size = { width: 12, height: 10 };
/** Two cells wide, one high, at the second row. */
const grid = (cellPx: number): MarkGrid => ({ cellPx, shapes: [{ lines: [1, 2, 4] }] });

function shares(marks: MarkGrid): Map<number, number> {
  const covered = new Map<number, number>();
  eachMarkPixel(marks, 0, size, (pixel, share) => covered.set(pixel, share));
  return covered;
}
const total = (covered: ReadonlyMap<number, number>): number =>
  [...covered.values()].reduce((sum, share) => sum + share, 0);

test('cells of a pixel are covered whole, and nothing else', () => {
  expect(shares(grid(1))).toEqual(new Map([14, 15].map((pixel) => [pixel, 1])));
});

test('larger cells are rounded off, and cover as much in all', () => {
  const covered = shares(grid(3));
  expect(total(covered)).toBeCloseTo(18, 5);
  expect(covered.get(4 * 12 + 9)).toBeCloseTo(1, 6); // inside
  expect(covered.get(3 * 12 + 6)).toBeCloseTo(4 / 9, 6); // a corner
});

test('on a small picture a cell covers its part of a pixel', () => {
  const covered = shares(scaledMarks(grid(1), 0.5));
  // Cells 2 and 3 of row 1 fill the lower half of pixel 1 of row 0.
  expect(covered).toEqual(new Map([[1, 0.5]]));
});

test('a mark at the border keeps within the picture', () => {
  const covered = shares({ cellPx: 2, shapes: [{ lines: [4, 5, 6] }] });
  expect(Math.max(...covered.keys())).toBe(119);
  expect(covered.get(119)).toBeGreaterThan(0.4);
});

test('marks are painted in their order, the last on top; without its shape nothing is', () => {
  const rgba = new Uint8ClampedArray(4 * 120).fill(255);
  const marks = [
    { shape: 0, lab: [100, 0, 0] as const },
    { shape: 0, lab: [0, 0, 0] as const },
    { shape: 7, lab: [0, 0, 0] as const },
  ];
  paintMarks(grid(1), marks, size, rgba);
  expect([...rgba.subarray(4 * 14, 4 * 14 + 4)]).toEqual([0, 0, 0, 255]);
  expect([...rgba.subarray(4 * 13, 4 * 13 + 4)]).toEqual([255, 255, 255, 255]);
  expect(rgba.filter((code) => code === 0)).toHaveLength(6);
});

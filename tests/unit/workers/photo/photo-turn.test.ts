import { expect, test } from 'vitest';
import { uprightMatrix } from '../../../../workers/photo/photo-turn.ts';

// CIPA DC-008, EXIF 2.32, 4.6.4 Orientation: where the stored first row and first column are, seen upright.
const stored = { width: 30, height: 20 };

/** Where a place of the stored photo comes to lie. */
function upright(orientation: number, x: number, y: number): readonly number[] {
  const [a, b, c, d, e, f] = uprightMatrix(orientation, stored);
  return [a * x + c * y + e, b * x + d * y + f];
}

test.each([
  // The stored upper left corner, the end of its first row, the end of its first column.
  [1, [0, 0], [30, 0], [0, 20]],
  [2, [30, 0], [0, 0], [30, 20]],
  [3, [30, 20], [0, 20], [30, 0]],
  [4, [0, 20], [30, 20], [0, 0]],
  [5, [0, 0], [0, 30], [20, 0]],
  [6, [20, 0], [20, 30], [0, 0]],
  [7, [20, 30], [20, 0], [0, 30]],
  [8, [0, 30], [0, 0], [20, 30]],
  // A tag that says nothing is passed over.
  [0, [0, 0], [30, 0], [0, 20]],
  [9, [0, 0], [30, 0], [0, 20]],
])('orientation %i', (orientation, corner, rowEnd, columnEnd) => {
  expect(upright(orientation, 0, 0)).toEqual(corner);
  expect(upright(orientation, stored.width, 0)).toEqual(rowEnd);
  expect(upright(orientation, 0, stored.height)).toEqual(columnEnd);
});

import { expect, test } from 'vitest';
import { findRoot } from '../../../../app/core/numeric/find-root.ts';

test.each([
  ['a line', (x: number) => 3 - x, 3],
  ['a cube', (x: number) => 8 - x ** 3, 2],
  ['a steep fall', (x: number) => 1 - Math.exp(5 * (x - 1)), 1],
])('finds where %s crosses zero, as halving does', (_, of, root) => {
  let low = -10;
  let high = 10;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (of(middle) > 0) low = middle;
    else high = middle;
  }
  expect(findRoot(of, -10, 10)).toBeCloseTo(root, 7);
  expect(findRoot(of, -10, 10)).toBeCloseTo((low + high) / 2, 7);
});

test('where it does not cross the nearer end is the answer', () => {
  expect(findRoot(() => 1, 0, 5)).toBe(5);
  expect(findRoot(() => -1, 0, 5)).toBe(0);
  expect(findRoot(() => Number.NaN, 0, 5)).toBe(0);
});

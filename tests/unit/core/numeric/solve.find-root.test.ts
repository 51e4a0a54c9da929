import { expect, test } from 'vitest';
import { bisect, findRoot } from '../../../../app/core/numeric/solve.ts';

test.each([
  ['a line', (x: number) => 3 - x, 3],
  ['a cube', (x: number) => 8 - x ** 3, 2],
  ['a steep fall', (x: number) => 1 - Math.exp(5 * (x - 1)), 1],
])('finds where %s crosses zero, and so does halving', (_, f, root) => {
  expect(findRoot(f, -10, 10)).toBeCloseTo(root, 7);
  const [low, high] = bisect(
    (x) => f(x) > 0,
    -10,
    10,
    () => 0,
  );
  expect((low + high) / 2).toBeCloseTo(root, 12);
});

test('where it does not cross the nearer end is the answer', () => {
  expect(findRoot(() => 1, 0, 5)).toBe(5);
  expect(findRoot(() => -1, 0, 5)).toBe(0);
  expect(findRoot(() => Number.NaN, 0, 5)).toBe(0);
});

test('halving stops at the wanted width, with the place where the condition ends inside', () => {
  const [low, high] = bisect(
    (x) => x < 0.3,
    0,
    1,
    (end) => 0.01 * end,
  );
  expect(low).toBeLessThan(0.3);
  expect(high).toBeGreaterThanOrEqual(0.3);
  expect(high - low).toBeLessThanOrEqual(0.01 * high);
  expect(high - low).toBeGreaterThan(0.001 * high);
});

import { sampleCorrelation } from 'simple-statistics';
import { expect, test } from 'vitest';
import { Correlation } from '../../../../app/core/numeric/correlation.ts';

test('is that of simple-statistics 7.12.1', () => {
  const [xs, ys] = [
    [1, 4, 2, 8, 5, 7],
    [3, 6, 1, 9, 9, 4],
  ] as const;
  const own = new Correlation();
  for (const [n, x] of xs.entries()) own.add(x, ys[n] as number);
  expect(own.value()).toBeCloseTo(sampleCorrelation([...xs], [...ys]), 12);
  expect(own.count).toBe(6);
});

test('is nothing where one side does not vary, or nothing was given', () => {
  const flat = new Correlation();
  expect(flat.value()).toBe(0);
  for (const y of [1, 2, 3]) flat.add(5, y);
  expect(flat.value()).toBe(0);
});

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type MassSizes, massSizes, massWashes } from '../../../../app/model/masses.ts';
import {
  leastSizeMm,
  mostSizeMm,
  smallestSizes,
  withSize,
} from '../../../../app/model/smallest-sizes.ts';

test('the usual sizes where she wished for none', () => {
  expect(smallestSizes()).toEqual({ firstWash: 10, second: 5, darks: 2 });
  expect(smallestSizes(massSizes)).toEqual(massSizes);
});

test.each([
  [
    { firstWash: 60, second: 5, darks: 0 },
    { firstWash: 40, second: 5, darks: 1 },
  ],
  [
    { firstWash: 4, second: 8, darks: 6 },
    { firstWash: 4, second: 4, darks: 4 },
  ],
  [
    { firstWash: Number.NaN, second: 5, darks: 2 },
    { firstWash: 10, second: 5, darks: 2 },
  ],
])('%j is held to %j', (wished, sizes) => expect(smallestSizes(wished)).toEqual(sizes));

test('one size set, the others give way', () => {
  expect(withSize(massSizes, 'second', 12)).toEqual({ firstWash: 12, second: 12, darks: 2 });
  expect(withSize(massSizes, 'firstWash', 3)).toEqual({ firstWash: 3, second: 3, darks: 2 });
  expect(withSize(massSizes, 'darks', 8)).toEqual({ firstWash: 10, second: 8, darks: 8 });
  expect(withSize(massSizes, 'darks', 0)).toEqual({ firstWash: 10, second: 5, darks: 1 });
});

test('whatever is set: within the bounds, broad to fine, the one set as set, and settled', () => {
  const mm = fc.double({ min: leastSizeMm, max: mostSizeMm, noNaN: true });
  const sizes = fc.record({ firstWash: mm, second: mm, darks: mm }).map(smallestSizes);
  fc.assert(
    fc.property(sizes, fc.constantFrom(...massWashes), mm, (before: MassSizes, wash, set) => {
      const after = withSize(before, wash, set);
      expect(after[wash]).toBe(set);
      expect(after.firstWash).toBeGreaterThanOrEqual(after.second);
      expect(after.second).toBeGreaterThanOrEqual(after.darks);
      expect(smallestSizes(after)).toEqual(after);
      expect(withSize(after, wash, set)).toEqual(after);
    }),
  );
});

import { describe, expect, it } from 'vitest';
import { washBands } from '../../../../../app/core/plan/solve/family-work.ts';
import { itemsOf, partitions } from '../../../../../app/core/plan/solve/share-puddles.ts';

describe('bands into washes', () => {
  it.each([
    [[], 3, []],
    [[2], 3, [[[], [2]]]],
    [
      [2, 3, 4],
      3,
      [
        [[], [2]],
        [[], [3]],
        [[], [4]],
      ],
    ],
    [
      [1, 2, 3, 4],
      3,
      [
        [[1], [2]],
        [[], [3]],
        [[], [4]],
      ],
    ],
    [
      [1, 2, 3, 4, 5],
      3,
      [
        [[1], [2]],
        [[3], [4]],
        [[], [5]],
      ],
    ],
    [
      [2, 3, 4, 5, 6, 7],
      3,
      [
        [[2], [3]],
        [[4], [5]],
        [[6], [7]],
      ],
    ],
    [[1, 2, 3], 1, [[[1], [2, 3]]]],
  ])('%j with %i washes', (bands, most, wanted) => {
    const got = washBands(bands as number[], most).map(({ weak, full }) => [weak, full]);
    expect(got).toEqual(wanted);
  });

  it('splits of items into groups, as many as the Stirling numbers say', () => {
    expect(partitions(6, 3)).toHaveLength(1 + 31 + 90);
    expect(partitions(4, 4)).toHaveLength(15);
    for (const split of partitions(5, 3)) {
      expect(split.flatMap(itemsOf).sort()).toEqual([0, 1, 2, 3, 4]);
    }
  });
});

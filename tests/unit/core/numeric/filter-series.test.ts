import { expect, test } from 'vitest';
import {
  boxMeans,
  runningMedian,
  thresholdWithHysteresis,
} from '../../../../app/core/numeric/filter-series.ts';
import { seeded } from '../../../support/reading/seeded.ts';

const means = (values: readonly number[], half: number, closed: boolean): number[] => [
  ...boxMeans(Float64Array.from(values), half, closed, new Float64Array(values.length)),
];

test('means of a box; open ends stay where they are', () => {
  expect(means([0, 3, 6, 0, 9], 1, false)).toEqual([0, 3, 3, 5, 9]);
  expect(means([0, 3, 6, 0, 9], 2, false)).toEqual([0, 3, 3.6, 5, 9]);
  expect(means([4], 2, false)).toEqual([4]);
  expect(means([], 2, true)).toEqual([]);
});

test('a closed row goes round its end, and a box wider than it takes all of it', () => {
  expect(means([0, 3, 6, 0], 1, true)).toEqual([1, 3, 3, 2]);
  expect(means([1, 2, 6], 9, true)).toEqual([3, 3, 3]);
});

test('a row read backwards gives the same backwards', () => {
  const random = seeded(3);
  const values = Array.from({ length: 40 }, random);
  for (const closed of [false, true]) {
    const back = means(values.toReversed(), 4, closed).toReversed();
    means(values, 4, closed).forEach((mean, i) => {
      expect(back[i]).toBeCloseTo(mean, 12);
    });
    const settle = (row: readonly number[]) => [
      ...thresholdWithHysteresis(Float32Array.from(row), 0.5, 0.2, closed),
    ];
    expect(settle(values.toReversed()).toReversed()).toEqual(settle(values));
  }
});

test('values near the limit go with the nearest that is clear of it', () => {
  const settle = (...row: number[]) => [
    ...thresholdWithHysteresis(Float32Array.from(row), 10, 2, false),
  ];
  // The one in the middle is as near to both: there the plain limit decides.
  expect(settle(20, 9, 9, 11, 0)).toEqual([1, 1, 0, 0, 0]);
  expect(settle(20, 9, 11, 11, 0)).toEqual([1, 1, 1, 0, 0]);
  expect(settle(11, 9)).toEqual([1, 0]);
});

test('a median of five, of fewer towards open ends, round the end of a closed row', () => {
  const medians = (closed: boolean) => [
    ...runningMedian(Float32Array.from([9, 1, 8, 2, 7, 3]), closed),
  ];
  expect(medians(false)).toEqual([9, 8, 7, 3, 3, 3]);
  // 7 3 9 1 8, 3 9 1 8 2, 9 1 8 2 7, 1 8 2 7 3, 8 2 7 3 9, 2 7 3 9 1
  expect(medians(true)).toEqual([7, 3, 7, 3, 7, 3]);
});

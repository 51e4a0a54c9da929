import { expect, test } from 'vitest';
import { bandMapOf } from '../../../../workers/kernels/values/band-map.ts';
import { binOf, lightnessHistogram } from '../../../../workers/kernels/values/histogram.ts';
import { optimalBands } from '../../../../workers/kernels/values/optimal-bands.ts';
import { seeded } from './seeded.ts';

const histogramOf = (values: readonly number[]): Uint32Array => {
  const counts = new Uint32Array(256);
  for (const value of values) counts[value] = (counts[value] as number) + 1;
  return counts;
};

const costOf = (groups: readonly (readonly number[])[]): number => {
  let cost = 0;
  for (const group of groups) {
    const mean = group.reduce((sum, value) => sum + value, 0) / group.length;
    for (const value of group) cost += (value - mean) ** 2;
  }
  return cost;
};

const near = (cost: number, wanted: number): void => {
  expect(Math.abs(cost - wanted)).toBeLessThanOrEqual(1e-6 * wanted + 1e-6);
};

test('seeded small histograms: no cut into three is cheaper', () => {
  const random = seeded(21);
  for (let run = 0; run < 50; run++) {
    const values = Array.from({ length: 12 }, () => Math.floor(40 * random()));
    values.sort((x, y) => x - y);
    let least = Number.POSITIVE_INFINITY;
    for (let i = 1; i < 11; i++) {
      for (let j = i + 1; j < 12; j++) {
        least = Math.min(least, costOf([values.slice(0, i), values.slice(i, j), values.slice(j)]));
      }
    }
    near((optimalBands(histogramOf(values), 3)[2] as { cost: number }).cost, least);
  }
});

test('limits lie midway in the gaps', () => {
  const found = optimalBands(histogramOf([10, 10, 20, 200, 210, 210]), 2);
  expect(found[1]?.limits).toEqual([110 / 2.55]);
});

test('fewer tones give fewer bands, none of them empty', () => {
  expect(optimalBands(histogramOf([7, 7, 7]), 7)).toEqual([{ limits: [], cost: 0 }]);
  const two = optimalBands(histogramOf([0, 0, 255]), 7);
  expect(two).toHaveLength(2);
  expect(two[1]).toEqual({ limits: [50], cost: 0 });
  expect(optimalBands(new Uint32Array(256), 7)).toEqual([]);
});

test('band 1 is the lightest, and the map agrees with the histogram', () => {
  const lightness = Float32Array.of(0, 29.9, 30.2, 60, 99, 100);
  expect([...bandMapOf(lightness, [30, 60.1])]).toEqual([3, 3, 2, 2, 1, 1]);
  expect(lightnessHistogram(lightness).reduce((x, y) => x + y)).toBe(6);
  expect([binOf(-3), binOf(0), binOf(50), binOf(100), binOf(101)]).toEqual([0, 0, 127, 255, 255]);
});

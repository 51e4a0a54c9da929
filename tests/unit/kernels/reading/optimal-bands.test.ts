import { ckmeans } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { simplify } from '../../../../workers/kernels/pixels/simplify.ts';
import { bandMapOf, bandOfBins } from '../../../../workers/kernels/values/band-map.ts';
import { binOf, lightnessHistogram } from '../../../../workers/kernels/values/histogram.ts';
import { optimalBands } from '../../../../workers/kernels/values/optimal-bands.ts';
import { drained } from './drained.ts';
import { opened, photographs } from './rasters.ts';
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

/** The values told apart by the limits found, so that the limits themselves are tested. */
const groupsBy = (values: readonly number[], limits: readonly number[]): number[][] => {
  const bands = bandOfBins(limits);
  const groups: number[][] = Array.from({ length: limits.length + 1 }, () => []);
  for (const value of values) groups[(bands[value] as number) - 1]?.push(value);
  return groups;
};

const near = (cost: number, wanted: number): void => {
  expect(Math.abs(cost - wanted)).toBeLessThanOrEqual(1e-6 * wanted + 1e-6);
};

describe.each(photographs)('%s', (path) => {
  test('limits for 2 to 7 bands cost what an independent exact optimum costs', async () => {
    const { raster } = await opened(path);
    const { lightness } = drained(simplify(raster, raster.width / 381));
    // Every 199th pixel: the peer takes seconds for all of them. Both sides get these.
    const values: number[] = [];
    for (let i = 0; i < lightness.length; i += 199) values.push(binOf(lightness[i] as number));
    const found = optimalBands(histogramOf(values), 7);
    expect(found).toHaveLength(7);
    for (let k = 2; k <= 7; k++) {
      const wanted = costOf(ckmeans(values, k));
      const { limits, cost } = found[k - 1] as (typeof found)[number];
      expect(limits).toHaveLength(k - 1);
      near(cost, wanted);
      near(costOf(groupsBy(values, limits)), wanted);
    }
  }, 60_000);
});

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

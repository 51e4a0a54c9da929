import { ckmeans } from 'simple-statistics';
import { beforeAll, describe, expect, test } from 'vitest';
import { runToEnd } from '../../../../../app/core/numeric/run-to-end.ts';
import { type LinearRaster, lightnessPlane } from '../../../../../app/core/raster/linear-raster.ts';
import { simplify } from '../../../../../app/core/raster/simplify.ts';
import { bandMapOf, bandOfBins } from '../../../../../app/core/reading/sort-pixels.ts';
import { optimalBands } from '../../../../../app/core/reading/values/choose-limits.ts';
import { binOf, binsOf, countBins } from '../../../../../app/core/reading/values/list-bands.ts';
import { eightPhotographs } from '../../../../support/reading/eight-photographs.ts';
import { opened } from '../../../../support/reading/rasters.ts';
import { seeded } from '../../../../support/reading/seeded.ts';

const ks = [2, 3, 4, 5, 6, 7];
const longSidePx = 480;

const costOf = (groups: readonly (readonly number[])[]): number => {
  let cost = 0;
  for (const group of groups) {
    const mean = group.reduce((sum, value) => sum + value, 0) / group.length;
    for (const value of group) cost += (value - mean) ** 2;
  }
  return cost;
};

/** Values told apart by limits as the app does it. */
const groupsBy = (values: readonly number[], limits: readonly number[]): number[][] => {
  const bands = bandOfBins(limits);
  const groups: number[][] = Array.from({ length: limits.length + 1 }, () => []);
  for (const value of values) groups[(bands[value] as number) - 1]?.push(value);
  return groups;
};

/** The luminance row of sRGB (IEC 61966-2-1, CSS Color 4). */
const [redY, greenY, blueY] = [0.2126390058715103, 0.7151686787677559, 0.07219231536073371];

/**
 * The same luminance in other hues: red and blue change places at seven tenths, green makes up the
 * difference; where that leaves 0..1, grey is mixed in as far as needed.
 */
function otherHues({ red, green, blue, ...size }: LinearRaster): LinearRaster {
  const other = { ...size, red: red.slice(), green: green.slice(), blue: blue.slice() };
  for (let i = 0; i < red.length; i++) {
    const [r, g, b] = [red[i] as number, green[i] as number, blue[i] as number];
    const y = redY * r + greenY * g + blueY * b;
    const turned = [0.7 * b, (y - 0.7 * (redY * b + blueY * r)) / greenY, 0.7 * r] as const;
    let part = 1;
    for (const value of turned) {
      if (value > 1) part = Math.min(part, (1 - y) / (value - y));
      if (value < 0) part = Math.min(part, y / (y - value));
    }
    other.red[i] = y + part * (turned[0] - y);
    other.green[i] = y + part * (turned[1] - y);
    other.blue[i] = y + part * (turned[2] - y);
  }
  return other;
}

const simplified = (raster: LinearRaster): Float32Array =>
  runToEnd(simplify(raster, raster.width / 381)).lightness;

describe.each(eightPhotographs)('%s', (path) => {
  let raster: LinearRaster;
  let lightness: Float32Array;
  beforeAll(async () => {
    raster = (await opened(path, longSidePx)).raster;
    lightness = simplified(raster);
  });

  test('limits for 2 to 7 bands are the exact optimum', () => {
    // Every 97th pixel, else the peer takes minutes; both sides get these.
    const values: number[] = [];
    for (let i = 0; i < lightness.length; i += 97) values.push(binOf(lightness[i] as number));
    const counts = new Uint32Array(256);
    for (const value of values) counts[value] = (counts[value] as number) + 1;
    const found = optimalBands(counts, 7);
    for (const k of ks) {
      const wanted = costOf(ckmeans(values, k));
      const { limits = [], cost = Number.NaN } = found[k - 1] ?? {};
      expect(limits).toHaveLength(k - 1);
      expect(Math.abs(cost / wanted - 1)).toBeLessThan(1e-6);
      expect(Math.abs(costOf(groupsBy(values, limits)) / wanted - 1)).toBeLessThan(1e-6);
    }
  });

  test('other hues at equal lightness: the same limits and band map', () => {
    const turned = otherHues(raster);
    const [own, other] = [lightnessPlane(raster), lightnessPlane(turned)];
    let [hueChanged, most] = [0, 0];
    for (let i = 0; i < own.length; i++) {
      most = Math.max(most, Math.abs((own[i] as number) - (other[i] as number)));
      if (Math.abs((raster.red[i] as number) - (turned.red[i] as number)) > 0.002) hueChanged++;
    }
    expect(most).toBeLessThan(0.01);
    expect(hueChanged / own.length).toBeGreaterThan(0.3);
    const [before, after] = [lightness, simplified(turned)];
    const limitsBefore = optimalBands(countBins(binsOf(before)), 7);
    const limitsAfter = optimalBands(countBins(binsOf(after)), 7);
    for (const k of ks) {
      const [one, two] = [limitsBefore[k - 1]?.limits ?? [], limitsAfter[k - 1]?.limits ?? []];
      const apart = one.map((limit, n) => Math.abs(limit - (two[n] as number)));
      expect(Math.max(...apart)).toBeLessThan(0.4); // one bin
      const [mapBefore, mapAfter] = [bandMapOf(binsOf(before), one), bandMapOf(binsOf(after), two)];
      let differ = 0;
      for (let i = 0; i < mapBefore.length; i++) if (mapBefore[i] !== mapAfter[i]) differ++;
      expect(differ / mapBefore.length).toBeLessThanOrEqual(0.005);
    }
  });
});

const histogramOf = (values: readonly number[]): Uint32Array => {
  const counts = new Uint32Array(256);
  for (const value of values) counts[value] = (counts[value] as number) + 1;
  return counts;
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
  expect([...bandMapOf(binsOf(lightness), [30, 60.1])]).toEqual([3, 3, 2, 2, 1, 1]);
  expect(countBins(binsOf(lightness)).reduce((x, y) => x + y)).toBe(6);
  expect([binOf(-3), binOf(0), binOf(50), binOf(100), binOf(101)]).toEqual([0, 0, 127, 255, 255]);
});

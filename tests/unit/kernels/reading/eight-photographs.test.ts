import { ckmeans } from 'simple-statistics';
import { beforeAll, describe, expect, test } from 'vitest';
import type { LinearRaster } from '../../../../workers/kernels/pixels/linear-raster.ts';
import { lightnessPlane } from '../../../../workers/kernels/pixels/linear-raster.ts';
import { simplify } from '../../../../workers/kernels/pixels/simplify.ts';
import { bandMapOf, bandOfBins } from '../../../../workers/kernels/values/band-map.ts';
import { binOf, lightnessHistogram } from '../../../../workers/kernels/values/histogram.ts';
import { optimalBands } from '../../../../workers/kernels/values/optimal-bands.ts';
import { drained } from './drained.ts';
import { eightPhotographs } from './eight-photographs.ts';
import { opened } from './rasters.ts';

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
  drained(simplify(raster, raster.width / 381)).lightness;

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
    const limitsBefore = optimalBands(lightnessHistogram(before), 7);
    const limitsAfter = optimalBands(lightnessHistogram(after), 7);
    for (const k of ks) {
      const [one, two] = [limitsBefore[k - 1]?.limits ?? [], limitsAfter[k - 1]?.limits ?? []];
      const apart = one.map((limit, n) => Math.abs(limit - (two[n] as number)));
      expect(Math.max(...apart)).toBeLessThan(0.4); // one bin
      const [mapBefore, mapAfter] = [bandMapOf(before, one), bandMapOf(after, two)];
      let differ = 0;
      for (let i = 0; i < mapBefore.length; i++) if (mapBefore[i] !== mapAfter[i]) differ++;
      expect(differ / mapBefore.length).toBeLessThanOrEqual(0.005);
    }
  });
});

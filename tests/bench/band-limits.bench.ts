import { ckmeans } from 'simple-statistics';
import { binOf, lightnessHistogram } from '../../workers/kernels/values/histogram.ts';
import { optimalBands } from '../../workers/kernels/values/optimal-bands.ts';
import type { Bench } from './bench.ts';
import { lightnessByLibrary } from './lightness-by-library.ts';
import { seededPicture } from './seeded-picture.ts';

const bands = 5;

/** Sum of squared distances to the mean of each group. */
function costOf(groups: readonly (readonly number[])[]): number {
  let cost = 0;
  for (const group of groups) {
    const mean = group.reduce((sum, value) => sum + value, 0) / group.length;
    for (const value of group) cost += (value - mean) ** 2;
  }
  return cost;
}

export function bench(): Bench {
  const plane = lightnessByLibrary(seededPicture(320, 240, 2).rgba);
  const binned = Array.from(plane, binOf);
  const ours = () => optimalBands(lightnessHistogram(plane), bands);
  const peer = () => ckmeans(binned, bands);
  const [cost = Number.NaN, exact] = [ours()[bands - 1]?.cost, costOf(peer())];
  return {
    name: 'band limits',
    work: `best partition into ${bands} bands of 320 x 240 lightnesses; ours finds 1 to ${bands} at once, the library groups the values themselves`,
    ours: { name: 'histogram + dynamic programming', run: ours },
    peer: { name: 'simple-statistics ckmeans', run: peer },
    agreement: `cost ${((cost / exact - 1) * 100).toFixed(6)} % over the library's`,
  };
}

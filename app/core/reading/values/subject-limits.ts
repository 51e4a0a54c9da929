import { reserveWithin } from '../../limits.ts';
import type { ToneRange } from '../reading.ts';
import { optimalBands } from './choose-limits.ts';
import { bins, countBins, lightnessOfBin } from './list-bands.ts';

/** Values of a subject that lie nearer to each other than this, L*, are one (own; 0.8 of a Munsell value). */
const leastApart = 8;

/** The limits within the subject, and which of the picture's bands each of its steps goes by. */
export interface SubjectLimits {
  /** L*, from dark to light. */
  readonly limits: readonly number[];
  /** One more than there are limits; lightest first, as bands are numbered. */
  readonly bands: readonly number[];
}

/** Mean L* of every band these limits part a histogram into, lightest first; not a number where one is empty. */
function meansOf(histogram: ArrayLike<number>, limits: readonly number[]): number[] {
  const counts = new Array<number>(limits.length + 1).fill(0);
  const sums = [...counts];
  for (let bin = 0; bin < bins; bin++) {
    const lightness = lightnessOfBin(bin);
    const band = limits.filter((limit) => limit > lightness).length;
    counts[band] += histogram[bin];
    sums[band] += histogram[bin] * lightness;
  }
  return sums.map((sum, band) => sum / counts[band]);
}

/** All ways to choose so many of 1..`most`, each in order. */
function choices(most: number, count: number, from = 1): number[][] {
  if (count === 0) return [[]];
  const ways: number[][] = [];
  for (let first = from; first <= most - count + 1; first++) {
    for (const rest of choices(most, count - 1, first + 1)) ways.push([first, ...rest]);
  }
  return ways;
}

/**
 * The subject is looked at for itself: as many values as the picture has, if so many can be told apart in it, parted
 * where its own tones part. Fewer go by the picture's bands they lie nearest to. `isSubject` is 1 for its pixels,
 * `lightnessMap` the bin of every pixel, `histogram` that of the whole picture, `limits` the picture's own. Null for a
 * subject without pixels.
 */
export function subjectLimits(
  lightnessMap: Uint8Array,
  isSubject: Uint8Array,
  histogram: ArrayLike<number>,
  limits: readonly number[],
  range: Pick<ToneRange, 'mode' | 'paper'>,
): SubjectLimits | null {
  const inside = countBins(lightnessMap.filter((_, i) => isSubject[i] === 1));
  const count = limits.length + 1;
  const areApart = (own: readonly number[]): boolean =>
    meansOf(inside, own).every((mean, n, all) => n === 0 || all[n - 1] - mean >= leastApart);
  const found = optimalBands(inside, count).findLast((one) => areApart(one.limits));
  if (!found) return null;
  // What is planned as paper stays in the lightest.
  const white = range.mode === 'opened' ? 100 : range.paper - reserveWithin;
  const own = found.limits.map((limit) => Math.min(limit, white));
  const means = meansOf(inside, own);
  const all = meansOf(histogram, limits);
  const apart = (bands: readonly number[]): number =>
    bands.reduce((sum, band, n) => sum + Math.abs(means[n] - all[band - 1]), 0);
  const bands = choices(count, means.length).reduce((best, way) =>
    apart(way) < apart(best) ? way : best,
  );
  return { limits: own, bands };
}

import { mostBands, reserveWithin } from '../../limits.ts';
import type { BandsWhy, ReadingWishes, ToneRange } from '../reading.ts';
import { onTheSheet } from '../tone-range.ts';
import { lightnessOfBin } from './list-bands.ts';

export interface ChosenLimits {
  /** L*, from dark to light. */
  readonly limits: readonly number[];
  readonly proposedBands: number;
  readonly why: BandsWhy;
  /** How many tones, and so bands at most, the picture holds. */
  readonly tones: number;
}

/**
 * The limits between bands: hers, or the best for the number she wished, or for the number the
 * picture asks for. `histogram` is of simplified lightness, `tones` how many the picture itself shows;
 * `isOneColour` where nothing in it is told apart by colour.
 */
export function chooseLimits(
  histogram: ArrayLike<number>,
  tones: number,
  range: ToneRange,
  wishes: ReadingWishes,
  isOneColour = false,
): ChosenLimits {
  const most = Math.min(mostBands, tones, tonesIn(histogram));
  const best = optimalBands(histogram, most);
  const { bands: proposedBands, why } = proposeBands(best, histogram, range, isOneColour);
  const count = Math.min(most, wishes.bands ?? proposedBands);
  const limits = wishes.limits
    ? [...new Set(wishes.limits)].sort((x, y) => x - y)
    : (best[count - 1]?.limits ?? []);
  return { limits, proposedBands, why, tones: most };
}

interface BandProposal {
  readonly bands: number;
  readonly why: BandsWhy;
}

/**
 * Three do where tones stray no further than this from their band's, as standard deviation in L*:
 * half a step of Munsell value (own, set on photographs).
 */
const threeStray = 5;
/** Five are asked for where four let tones stray further: over a quarter of the scale a band. */
const fourStray = 7.5;
/** Less white than this share of the picture is no reason for another band. */
const whiteShare = 0.01;

function countOf(histogram: ArrayLike<number>, from: number): number {
  let count = 0;
  for (let bin = 0; bin < histogram.length; bin++) {
    if (lightnessOfBin(bin) > from) count += histogram[bin];
  }
  return count;
}

/** Whether the lightest of these bands would stay paper, and is large enough to matter. */
function keepsWhites(
  { limits }: OptimalBands,
  histogram: ArrayLike<number>,
  range: ToneRange,
): boolean {
  const from = limits.at(-1) ?? -1;
  const count = countOf(histogram, from);
  let sum = 0;
  for (let bin = 0; bin < histogram.length; bin++) {
    const lightness = lightnessOfBin(bin);
    if (lightness > from) sum += histogram[bin] * onTheSheet(range, lightness);
  }
  const enough = count >= whiteShare * countOf(histogram, -1);
  return enough && range.paper - sum / count <= reserveWithin;
}

/**
 * How many bands the picture asks for. `best[k - 1]` is the best partition of the histogram into k
 * bands; there are as many as the picture has tones, up to seven.
 */
export function proposeBands(
  best: readonly OptimalBands[],
  histogram: ArrayLike<number>,
  range: ToneRange,
  isOneColour = false,
): BandProposal {
  const [, , three, four, five] = best;
  if (!three || !four) {
    const tones = Math.max(1, best.length);
    return { bands: tones, why: { why: 'few-tones', tones } };
  }
  const pixels = countOf(histogram, -1);
  const stray = ({ cost }: OptimalBands): number => lightnessOfBin(Math.sqrt(cost / pixels));
  if (five && !keepsWhites(four, histogram, range) && keepsWhites(five, histogram, range))
    return { bands: 5, why: { why: 'whites-merge' } };
  if (stray(three) <= threeStray) return { bands: 3, why: { why: 'three-enough' } };
  if (five && stray(four) > fourStray) return { bands: 5, why: { why: 'widely-spread' } };
  if (five && isOneColour) return { bands: 5, why: { why: 'one-colour' } };
  return { bands: 4, why: { why: 'clear' } };
}

// Exact multi-level thresholds of least within-class variance (Otsu, 'A Threshold Selection Method
// from Gray-Level Histograms', 1979) by dynamic programming over the filled bins, as in Wang, Song,
// 'Ckmeans.1d.dp: Optimal k-means Clustering in One Dimension by Dynamic Programming', 2011.
interface OptimalBands {
  /** Limits between the bands, L*, from dark to light; one fewer than there are bands. */
  readonly limits: readonly number[];
  /** Sum over all pixels of the squared distance to their band's mean, in bins squared. */
  readonly cost: number;
}

/** Running sums over the filled bins, so that the cost of any run of them is three differences. */
interface Sums {
  readonly filled: readonly number[];
  readonly count: Float64Array;
  readonly first: Float64Array;
  readonly second: Float64Array;
}

function sumsOf(histogram: ArrayLike<number>): Sums {
  const filled: number[] = [];
  for (let bin = 0; bin < histogram.length; bin++) if (histogram[bin]) filled.push(bin);
  const [count, first, second] = [0, 1, 2].map((power) => {
    const sums = new Float64Array(filled.length + 1);
    for (const [i, bin] of filled.entries()) {
      sums[i + 1] = sums[i] + histogram[bin] * bin ** power;
    }
    return sums;
  }) as [Float64Array, Float64Array, Float64Array];
  return { filled, count, first, second };
}

/** Cost of one band over the filled bins from `low` up to but not including `high`. */
function costOf(sums: Sums, low: number, high: number): number {
  const { count, first, second } = sums;
  const sum = first[high] - first[low];
  const squares = second[high] - second[low];
  return Math.max(0, squares - (sum * sum) / (count[high] - count[low]));
}

/** Best costs with one band more: `least` is of the first i tones in the bands so far. */
function oneBandMore(sums: Sums, least: Float64Array, bands: number, start: Uint16Array) {
  const { count, first, second } = sums;
  const next = new Float64Array(least.length).fill(Number.POSITIVE_INFINITY);
  for (let i = bands + 1; i < least.length; i++) {
    const [allCount, allFirst, allSecond] = [count[i], first[i], second[i]];
    let best = Number.POSITIVE_INFINITY;
    let from = bands;
    // costOf, written out: this is the innermost of three loops.
    for (let j = bands; j < i; j++) {
      const sum = allFirst - first[j];
      const squares = allSecond - second[j];
      const own = squares - (sum * sum) / (allCount - count[j]);
      const cost = least[j] + Math.max(own, 0);
      if (cost >= best) continue;
      best = cost;
      from = j;
    }
    next[i] = best;
    start[i] = from;
  }
  return next;
}

/** How many different tones, and so bands at most, a histogram holds. */
function tonesIn(histogram: ArrayLike<number>): number {
  let tones = 0;
  for (let bin = 0; bin < histogram.length; bin++) if (histogram[bin]) tones++;
  return tones;
}

/**
 * The best partition into 1, 2 ... `most` bands, in that order; fewer where there are fewer tones,
 * none for an empty histogram. Limits lie midway in the histogram's gaps.
 */
export function optimalBands(histogram: ArrayLike<number>, most: number): OptimalBands[] {
  const sums = sumsOf(histogram);
  const { filled } = sums;
  const tones = filled.length;
  const found: OptimalBands[] = [];
  /** Least cost of the first i tones in the bands so far, and where the last of them starts. */
  let least = Float64Array.from({ length: tones + 1 }, (_, i) => (i ? costOf(sums, 0, i) : 0));
  const starts: Uint16Array[] = [new Uint16Array(tones + 1)];
  for (let k = 1; k <= Math.min(most, tones); k++) {
    found.push({ limits: limitsOf(filled, starts), cost: least[tones] });
    const start = new Uint16Array(tones + 1);
    if (k < Math.min(most, tones)) least = oneBandMore(sums, least, k, start);
    starts.push(start);
  }
  return found;
}

function limitsOf(filled: readonly number[], starts: readonly Uint16Array[]): number[] {
  const limits: number[] = [];
  let end = filled.length;
  for (let k = starts.length - 1; k > 0; k--) {
    end = starts[k][end];
    limits.unshift(lightnessOfBin((filled[end - 1] + filled[end]) / 2));
  }
  return limits;
}

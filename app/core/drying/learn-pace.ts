import type { Range } from '../colour/lab.ts';
import { type PaperChoice, samePaper } from './paper-choice.ts';
import type { WaterKind } from './water.ts';

export type DryingClockName = 'shine' | 'dry';

/** What a factor is learned for: one of the two clocks, on one paper, for one kind of wash. */
interface PaceOf {
  readonly clock: DryingClockName;
  readonly paper: PaperChoice;
  readonly wash: WaterKind;
}

/** One tap against the model, or her wish to forget what was learned. `from` names what was tapped. */
export type Lesson =
  | (PaceOf & { readonly kind: 'tap'; readonly ratio: number; readonly from: string })
  | (PaceOf & { readonly kind: 'forget' });

/** How she and her paper dry against the model: factor 1 as reckoned, 2 takes twice as long. */
export interface Pace {
  readonly factor: number;
  /** Number of taps it rests on. */
  readonly taps: number;
  /** Scatter of her times, as a standard deviation of the natural logarithm. */
  readonly scatter: number;
}

/** Before anything is known of her: scatter, and how many taps that guess is worth (own). */
const guess = { scatter: 0.3, taps: 2 } as const;
/** Older taps are forgotten: she changes, so does her paper (own). */
const lastTaps = 20;
/** Outside this she tapped through, or slept: it teaches nothing (own). */
const believable = { least: 0.15, most: 7 } as const;

export const teaches = (ratio: number): boolean =>
  ratio >= believable.least && ratio <= believable.most;

const isOf = (a: PaceOf, b: PaceOf): boolean =>
  a.clock === b.clock && a.wash === b.wash && samePaper(a.paper, b.paper);

/**
 * The pace learned from all lessons in order. The factor is the median of the taps' log ratios with
 * one vote for 'as reckoned' among them: a single tap moves it half way, an odd evening hardly at
 * all, and two that agree are believed. Kept within 0.3..3 (own).
 */
export function learnPace(lessons: readonly Lesson[], what: PaceOf): Pace {
  let ratios: number[] = [];
  for (const lesson of lessons) {
    if (!isOf(lesson, what)) continue;
    if (lesson.kind === 'forget') ratios = [];
    else if (teaches(lesson.ratio)) ratios = [...ratios, Math.log(lesson.ratio)].slice(-lastTaps);
  }
  const middle = medianOf([0, ...ratios]);
  const spread = ratios.reduce((sum, ratio) => sum + (ratio - middle) ** 2, 0);
  const variance = (guess.taps * guess.scatter ** 2 + spread) / (guess.taps + ratios.length);
  return {
    factor: Math.min(3, Math.max(0.3, Math.exp(middle))),
    taps: ratios.length,
    scatter: Math.sqrt(variance),
  };
}

function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length / 2;
  return ((sorted[Math.ceil(half) - 1] ?? 0) + (sorted[Math.floor(half)] ?? 0)) / 2;
}

/** About nine times out of ten her own time lies within this many deviations (normal distribution). */
const deviations = 1.6;

/** Ends at zero have no logarithm: a share of the upper end stands for them. */
const least = 0.02;

/** The time the model holds for likely: the middle of its range on a ratio scale. 0 where there is none. */
export const geometricMiddle = ([low, high]: Range): number =>
  Math.sqrt(Math.max(low, high * least) * high);

/**
 * From the wide range of the untaught to hers: her factor on the model's middle, as wide as her taps
 * scatter. With n taps hers counts n to 1, so that each tap narrows it a little. Minutes.
 */
export function applyPace(untaught: Range, model: Range, pace: Pace): Range {
  const middle = geometricMiddle(model);
  if (pace.taps === 0 || middle <= 0 || untaught[1] <= 0) return untaught;
  const half = deviations * pace.scatter * Math.sqrt(1 + 1 / pace.taps);
  const centre = Math.log(middle * pace.factor);
  const hers = pace.taps / (pace.taps + 1);
  const blend = (own: number, wide: number): number =>
    Math.exp(hers * own + (1 - hers) * Math.log(wide));
  return [
    blend(centre - half, Math.max(untaught[0], untaught[1] * least)),
    blend(centre + half, untaught[1]),
  ];
}

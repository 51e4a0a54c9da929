import { type PaperChoice, samePaper } from './paper-choice.ts';
import type { WaterKind } from './water-of.ts';

export type DryingClockName = 'shine' | 'dry';

/** What a factor is learned for: one of the two clocks, on one paper, for one kind of wash. */
export interface PaceOf {
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
/** Outside this she tapped through, or slept: it teaches nothing (own limits). */
const believable = { least: 0.15, most: 7 } as const;

export const teaches = (ratio: number): boolean =>
  ratio >= believable.least && ratio <= believable.most;

const isOf = (a: PaceOf, b: PaceOf): boolean =>
  a.clock === b.clock && a.wash === b.wash && samePaper(a.paper, b.paper);

/**
 * The pace learned from all lessons in order. The factor is the median of the taps' log ratios with
 * one vote for 'as reckoned' among them: a single tap moves it half way, an odd evening hardly at
 * all, and two that agree are believed. Kept within 0.3..3. Own rule, no source.
 */
export function paceOf(lessons: readonly Lesson[], what: PaceOf): Pace {
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

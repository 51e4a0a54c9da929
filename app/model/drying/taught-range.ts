import type { Range } from '../lab.ts';
import type { Pace } from './learn-pace.ts';

/** About nine times out of ten her own time lies within this many deviations (normal distribution). */
const deviations = 1.6;

/** Ends at zero have no logarithm: a share of the upper end stands for them. */
const least = 0.02;

/** The time the model holds for likely: the middle of its range on a ratio scale. 0 where there is none. */
export const middleOf = ([low, high]: Range): number =>
  Math.sqrt(Math.max(low, high * least) * high);

/**
 * From the wide range of the untaught to hers: her factor on the model's middle, as wide as her taps
 * scatter. With n taps hers counts n to 1, so that each tap narrows it a little. Minutes.
 */
export function taughtRange(untaught: Range, model: Range, pace: Pace): Range {
  const middle = middleOf(model);
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

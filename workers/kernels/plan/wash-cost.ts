import type { FamilyWork } from './family-work.ts';
import type { Ground } from './ground.ts';
import { look, lookAtPuddle } from './look-at-puddle.ts';
import type { PuddleOption } from './puddle-option.ts';

/** Added per paint beyond the first, times area: two paints before three (design: the figure of the palette). */
export const perMixedPaint = 0.4;

/**
 * Stiff paint makes no wash: a surcharge from thick cream upwards, nearly one point where butter begins (a load of 16),
 * nearly three at 32 (own figure). Butter is for accents and dry brush (common practice, no source).
 */
export const stiffness = (load: number): number => Math.max(0, Math.log2(load / 12)) * 2;

/** Area-weighted cost of one option for one family's wash: both strengths. */
export function washCost(
  option: PuddleOption,
  work: FamilyWork,
  wash: number,
  ground: Ground,
): { cost: number; load: number } {
  const goal = work.washes[wash];
  if (!goal) return { cost: 0, load: 0 };
  let cost = 0;
  let area = 0;
  if (goal.weak) {
    lookAtPuddle(option, goal.weak, ground);
    cost += look.cost;
    for (const { weight } of goal.weak.targets) area += weight;
  }
  lookAtPuddle(option, goal.full, ground);
  cost += look.cost;
  for (const { weight } of goal.full.targets) area += weight;
  cost += (perMixedPaint * (option.members.length - 1) + stiffness(look.load)) * area;
  return { cost, load: look.load };
}

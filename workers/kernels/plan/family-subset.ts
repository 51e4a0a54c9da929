import type { FamilyWork } from './family-work.ts';
import { washedOver } from './ground.ts';
import { type Ground, look, lookAtPuddle } from './look-at-puddle.ts';
import type { PuddleOption } from './puddle-option.ts';

/** Added per paint beyond the first, times area: simpler mixes where it hardly matters (own figure). */
export const perMixedPaint = 0.1;

/**
 * Stiff paint makes no wash: a surcharge from milk upwards, one point at a load of 32 (own figure). The
 * ladder's word for what is over 16 is butter, for accents and dry brush (common practice, no source).
 */
export const stiffness = (load: number): number => Math.max(0, Math.log2(load / 8)) / 2;

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

/**
 * What it costs when these families share one puddle in every wash, all made of the paints in `mask`:
 * the washes one after the other, each with the option of least cost over what lies there.
 * With a single family: that family on those paints.
 */
export function sharedCost(
  works: readonly FamilyWork[],
  options: readonly PuddleOption[],
  mask: number,
  paper: Ground,
): number {
  const grounds = works.map(() => paper);
  const washes = works.reduce((most, work) => Math.max(most, work.washes.length), 0);
  const usable = options.filter((option) => (option.mask & ~mask) === 0);
  let total = 0;
  for (let wash = 0; wash < washes; wash++) {
    let best = Number.POSITIVE_INFINITY;
    let chosen: PuddleOption | undefined;
    for (const option of usable) {
      let cost = 0;
      for (let i = 0; i < works.length && cost < best; i++) {
        cost += washCost(option, works[i] as FamilyWork, wash, grounds[i] as Ground).cost;
      }
      if (cost < best) {
        best = cost;
        chosen = option;
      }
    }
    if (!chosen) return Number.POSITIVE_INFINITY;
    total += best;
    for (const [i, work] of works.entries()) {
      if (!work.washes[wash + 1]) continue;
      const { load } = washCost(chosen, work, wash, grounds[i] as Ground);
      grounds[i] = washedOver(chosen, load, grounds[i] as Ground);
    }
  }
  return total;
}

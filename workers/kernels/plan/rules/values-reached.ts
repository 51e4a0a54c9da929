import { valueOfLightness } from '../../../../app/model/munsell-value.ts';
import type { Step } from '../../../../app/model/wash-plan.ts';
import { type BrokenRule, broken, type Check, washesOf } from './broken-rule.ts';

/** From so many L* a value is clearly another (design, comparison); smaller shapes than this are not told. */
const clearly = 8;
const leastShare = 0.005;

const values = (difference: number): string => {
  const rounded = Math.round(difference * 2) / 2;
  return rounded <= 1 ? 'about one value' : `about ${rounded} values`;
};

interface Missed {
  readonly slot: number;
  readonly by: number;
}

/** Every shape gets the value it was planned to have; where it does not, the last wash over it says so. */
export const valuesReached: Check = (plan, { planned }) => {
  const { steps, slots } = plan;
  const sheet = steps.at(-1)?.after;
  if (!planned || !sheet) return [];
  const missed = slots.flatMap(({ reserve, share }, slot): Missed[] => {
    const got = sheet[slot];
    const wanted = planned[slot];
    if (reserve || share < leastShare || !got || !wanted) return [];
    if (Math.abs(got[0] - wanted[0]) <= clearly) return [];
    return [{ slot, by: valueOfLightness(got[0]) - valueOfLightness(wanted[0]) }];
  });
  const washes = washesOf(plan);
  const places = new Map<Step, Missed[]>();
  for (const one of missed) {
    const step = washes.findLast((wash) => wash.slots.includes(one.slot)) ?? steps.at(-1);
    if (step) places.set(step, [...(places.get(step) ?? []), one]);
  }
  return [...places].map(([step, all]): BrokenRule => {
    const worst = all.reduce((most, one) => (Math.abs(one.by) > Math.abs(most.by) ? one : most));
    const way = worst.by > 0 ? 'lighter' : 'darker';
    return broken(
      'value',
      step,
      `slot ${worst.slot} misses its value`,
      `Some of these shapes end ${values(Math.abs(worst.by))} ${way} than planned.`,
    );
  });
};

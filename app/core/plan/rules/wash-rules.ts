import { valueOfLightness } from '../../colour/lightness.ts';
import { otherValueFrom } from '../../limits.ts';
import type { Step } from '../plan.ts';
import {
  type BrokenRule,
  broken,
  type Check,
  mixesOfStep,
  overlap,
  passageOf,
  type RuledPlan,
  washesOf,
  washNumberOf,
} from './broken-rule.ts';

/** R2: on every shape the lighter wash before the darker one. */
export const lightBeforeDark: Check = (plan) => {
  const reached = new Map<number, number>();
  return washesOf(plan).flatMap((step): BrokenRule[] => {
    const rows = mixesOfStep(plan, step);
    let late = false;
    for (const i of step.slots) {
      const slot = plan.slots[i];
      const washes = rows
        .filter((row) => row.passage === slot?.passage && row.family === slot?.family)
        .map(({ wash }) => wash);
      if (washes.length === 0) continue;
      if (Math.min(...washes) < (reached.get(i) ?? 0)) late = true;
      reached.set(i, Math.max(reached.get(i) ?? 0, ...washes));
    }
    if (!late) return [];
    return [broken('R2', step, `${step.key} is too late`, { say: 'order/light-over-dark' })];
  });
};

/** Tolerance for rounding, L*. */
const rounding = 1e-6;

/** R2: transparent paint cannot lighten; where opaque paint does, it goes chalky. */
export const nothingLightens: Check = ({ steps, paper }) =>
  steps.flatMap((step, n) => {
    const before = steps[n - 1]?.after;
    const slot = step.after.findIndex(([lightness], i) => {
      const underneath = n === 0 ? paper : before?.[i];
      return underneath !== undefined && lightness > underneath[0] + rounding;
    });
    if (slot < 0) return [];
    return [broken('R2', step, `${step.key} lightens slot ${slot}`, { say: 'order/lightens' })];
  });

/** Area of a wash with all its goes and layers, as a share of the sheet. */
function areaOf(plan: RuledPlan, step: Step): number {
  const same = washesOf(plan).filter(
    (one) => passageOf(one) === passageOf(step) && washNumberOf(one) === washNumberOf(step),
  );
  const slots = new Set(same.flatMap((one) => one.slots));
  return [...slots].reduce((sum, i) => sum + (plan.slots[i]?.share ?? 0), 0);
}

/** R3: big before small, wash by wash of a passage. */
export const bigBeforeSmall: Check = (plan) => {
  const smallest = new Map<string, { area: number; wash: number }>();
  return washesOf(plan).flatMap((step): BrokenRule[] => {
    const area = areaOf(plan, step);
    const wash = washNumberOf(step);
    const before = smallest.get(passageOf(step));
    if (!before || area <= before.area) smallest.set(passageOf(step), { area, wash });
    if (!before || before.wash === wash || area <= before.area + 1e-9) return [];
    return [broken('R3', step, `${step.key} is larger`, { say: 'order/large-late' })];
  });
};

/** R3, R4: the small dark touches come when no wash goes over them any more. */
export const accentsLate: Check = (plan) =>
  plan.steps.flatMap((step, n): BrokenRule[] => {
    if (step.kind !== 'accents' && step.kind !== 'details') return [];
    const later = washesOf({ ...plan, steps: plan.steps.slice(n + 1) });
    if (!later.some((wash) => overlap(wash, step))) return [];
    return [
      broken('R3', step, `${step.key} before a wash over it`, { say: 'order/touches-early' }),
    ];
  });

/** R9: no more washes over each other than the paper bears. */
export const fewWashes: Check = (plan, { washes }) => {
  const over = new Map<number, number>();
  return washesOf(plan).flatMap((step): BrokenRule[] => {
    const counts = step.slots.map((i) => {
      const count = (over.get(i) ?? 0) + 1;
      over.set(i, count);
      return count;
    });
    const most = Math.max(0, ...counts);
    if (most <= washes) return [];
    return [
      broken('R9', step, `${most} washes on ${step.slots[counts.indexOf(most)]}`, {
        say: 'order/layers',
        layer: most,
        bears: washes,
      }),
    ];
  });
};

/** R19: no more washes than there are values. */
export const washesForValues: Check = (plan) => {
  const washes = washesOf(plan);
  return [...new Set(plan.slots.map(({ passage }) => passage))].flatMap((passage): BrokenRule[] => {
    const bands = new Set(
      plan.slots.filter((one) => one.passage === passage && !one.reserve).map(({ band }) => band),
    );
    const own = washes.filter((step) => passageOf(step) === passage);
    const numbers = new Set(own.map(washNumberOf));
    const last = own.at(-1);
    if (!last || numbers.size <= bands.size) return [];
    return [
      broken('R19', last, `${numbers.size} washes for ${bands.size} values`, {
        say: 'order/more-washes-than-values',
      }),
    ];
  });
};

/** Shapes with a smaller share of the sheet are not reported (own). */
const leastShare = 0.005;

/** Told to half values, at least one. */
const wholeValues = (difference: number): number =>
  Math.max(1, Math.round(Math.abs(difference) * 2) / 2);

interface Missed {
  readonly slot: number;
  readonly by: number;
}

/** Every shape must reach its planned value; a miss is reported at the last wash over the shape. */
export const valuesReached: Check = (plan, { planned }) => {
  const { steps, slots } = plan;
  const sheet = steps.at(-1)?.after;
  if (!planned || !sheet) return [];
  const missed = slots.flatMap(({ reserve, share }, slot): Missed[] => {
    const got = sheet[slot];
    const wanted = planned[slot];
    if (reserve || share < leastShare || !got || !wanted) return [];
    if (Math.abs(got[0] - wanted[0]) <= otherValueFrom) return [];
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
    return broken('value', step, `slot ${worst.slot} misses its value`, {
      say: 'value/missed',
      values: wholeValues(worst.by),
      lighter: worst.by > 0,
    });
  });
};

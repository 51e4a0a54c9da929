import type { Step } from '../../../../app/model/wash-plan.ts';
import {
  type BrokenRule,
  broken,
  type Check,
  overlap,
  passageOf,
  type RuledPlan,
  washesOf,
  washNumberOf,
} from './broken-rule.ts';

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
    return [
      broken(
        'R3',
        step,
        `${step.key} is larger`,
        'A large wash after smaller ones runs over their edges and blurs them.',
      ),
    ];
  });
};

/** R3, R4: the small dark touches come when no wash goes over them any more. */
export const touchesLate: Check = (plan) =>
  plan.steps.flatMap((step, n): BrokenRule[] => {
    if (step.kind !== 'accents') return [];
    const later = washesOf({ ...plan, steps: plan.steps.slice(n + 1) });
    if (!later.some((wash) => overlap(wash, step))) return [];
    return [
      broken(
        'R3',
        step,
        `${step.key} before a wash over it`,
        'A wash still goes over these touches: they smear and lose their edge.',
      ),
    ];
  });

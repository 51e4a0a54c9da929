import type { PlanEdit } from '../../../app/core/decisions/plan-edit.ts';
import { defaultPaperLab } from '../../../app/core/paint/colour-of-washes.ts';
import { orderSteps, orderWork } from '../../../app/core/plan/order-steps.ts';
import type { Step } from '../../../app/core/plan/plan.ts';
import type { PlanFacts } from '../../../app/core/plan/plan-facts.ts';
import { checkRules, ruleLimitsOf } from '../../../app/core/plan/rules/check-rules.ts';
import { type Told, told } from './told.ts';

/** The steps as planned, worked out once a picture. */
const plans = new WeakMap<PlanFacts, readonly Step[]>();

function planned(facts: PlanFacts): readonly Step[] {
  const steps = plans.get(facts) ?? orderSteps(facts);
  plans.set(facts, steps);
  return steps;
}

/** A solved plan with some edits, and the rules it breaks, in words. */
export function editedPlan(facts: PlanFacts, edits: readonly PlanEdit[]) {
  const ordered = orderWork(facts, edits);
  const sheet = { paper: defaultPaperLab, slots: facts.slots, optics: facts.paints };
  const broken = checkRules({ ...sheet, ...ordered }, ruleLimitsOf(facts, planned(facts)));
  const work = told(ordered);
  const find = (key: string): Told<Step> | undefined => work.steps.find((step) => step.key === key);
  return { ...work, broken, find, keys: work.steps.map(({ key }) => key) };
}

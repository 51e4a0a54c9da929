import type { PlanEdit } from '../../../../app/model/plan-edit.ts';
import type { Step } from '../../../../app/model/wash-plan.ts';
import { defaultPaperLab } from '../../../../workers/kernels/optics/default-paper.ts';
import { rulesBroken } from '../../../../workers/kernels/plan/check-rules.ts';
import { ruleLimitsOf } from '../../../../workers/kernels/plan/edits/rule-limits-of.ts';
import { orderSteps } from '../../../../workers/kernels/plan/order-steps.ts';
import { orderedWork } from '../../../../workers/kernels/plan/ordered-work.ts';
import type { PlanFacts } from '../../../../workers/kernels/plan/plan-facts.ts';

/** The steps as planned, worked out once a picture. */
const plans = new WeakMap<PlanFacts, readonly Step[]>();

function planned(facts: PlanFacts): readonly Step[] {
  const steps = plans.get(facts) ?? orderSteps(facts);
  plans.set(facts, steps);
  return steps;
}

/** A solved plan with some edits, and the rules it breaks. */
export function editedPlan(facts: PlanFacts, edits: readonly PlanEdit[]) {
  const work = orderedWork(facts, edits);
  const sheet = { paper: defaultPaperLab, slots: facts.slots, optics: facts.paints };
  const broken = rulesBroken({ ...sheet, ...work }, ruleLimitsOf(facts, planned(facts)));
  const find = (key: string): Step | undefined => work.steps.find((step) => step.key === key);
  return { ...work, broken, find, keys: work.steps.map(({ key }) => key) };
}

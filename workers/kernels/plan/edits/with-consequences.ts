import type { Step } from '../../../../app/model/wash-plan.ts';
import { rulesBroken } from '../check-rules.ts';
import type { BrokenRule, RuledPlan, RuleLimits } from '../rules/broken-rule.ts';

const nameOf = ({ rule, step, sentence }: BrokenRule): string => `${rule} ${step} ${sentence}`;

/**
 * The steps of a plan she changed, each with what will happen because of it: every rule broken now that was
 * not broken `before`, its sentence at its step. The gravest stands first, and alone; the others follow it.
 */
export function withConsequences(
  plan: RuledPlan,
  before: RuledPlan,
  limits: RuleLimits,
): readonly Step[] {
  const known = new Set(rulesBroken(before, limits).map(nameOf));
  const said = new Map<string, Set<string>>();
  for (const one of rulesBroken(plan, limits)) {
    if (known.has(nameOf(one))) continue;
    said.set(one.step, (said.get(one.step) ?? new Set()).add(one.sentence));
  }
  return plan.steps.map((step) => {
    const sentences = said.get(step.key);
    if (!sentences) return step;
    const [consequence = '', ...alsoHappens] = sentences;
    return { ...step, consequence, ...(alsoHappens.length > 0 && { alsoHappens }) };
  });
}

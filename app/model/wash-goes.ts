import type { Step, WashPlan } from './wash-plan.ts';

const passageOf = ({ key }: Pick<Step, 'key'>): string => key.split('/')[1] ?? '';

/** A wash of several colours or values can be painted in two goes, once. */
export function canBeSplit(
  { slots, steps }: Pick<WashPlan, 'slots' | 'steps'>,
  step: Step,
): boolean {
  if (steps.some(({ key }) => key === `${step.key}/b`)) return false;
  const values = new Set(step.slots.map((i) => slots[i]?.band));
  return step.kind === 'wash' && (step.families.length > 1 || values.size > 1);
}

/** The wash of the same passage that comes next; undefined where there is none. */
export function nextWash({ steps }: Pick<WashPlan, 'steps'>, step: Step): Step | undefined {
  if (step.kind !== 'wash') return undefined;
  return steps
    .slice(step.n)
    .find((one) => one.kind === 'wash' && passageOf(one) === passageOf(step));
}

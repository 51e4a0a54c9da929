import type { PlanEdit, Technique } from '../../decisions/plan-edit.ts';
import { type CautiousPaint, paintsWithoutDust } from '../../words/cautions.ts';
import type { Step, StepKind, WashPlan } from '../plan.ts';

const washes: readonly Technique[] = ['wet on dry', 'wet-in-wet', 'glaze', 'dry brush'];
const choices: Partial<Record<StepKind, readonly Technique[]>> = {
  wash: washes,
  accents: ['dry brush', 'wet on dry'],
  'last-lights': ['opaque white', 'scraping'],
};

/**
 * The ways a step of this kind can be painted with these paints; none where there is nothing to choose. No blade
 * where one of them must not be scraped.
 */
export function techniqueChoices(
  kind: StepKind,
  paints: readonly CautiousPaint[] = [],
): readonly Technique[] {
  const all = choices[kind] ?? [];
  if (paintsWithoutDust(paints).length === 0) return all;
  const left = all.filter((technique) => technique !== 'scraping');
  return left.length > 1 ? left : [];
}

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

type Placed = Pick<Step, 'key' | 'kind'>;

/** A drying check goes with the wash it waits for; one she put in stands by itself. */
export const standsByItself = ({ key, kind }: Placed): boolean =>
  kind !== 'dry' || key.includes('/add-');

const movable = (steps: readonly Placed[]): string[] =>
  steps.filter(standsByItself).map(({ key }) => key);

/** One place earlier, drying checks not counted; null where it is the first. */
export function movedEarlier(steps: readonly Placed[], key: string): PlanEdit | null {
  const keys = movable(steps);
  const index = keys.indexOf(key);
  return index < 1 ? null : { kind: 'move', key, after: keys[index - 2] ?? null };
}

/** One place later; null where it is the last. */
export function movedLater(steps: readonly Placed[], key: string): PlanEdit | null {
  const keys = movable(steps);
  const index = keys.indexOf(key);
  const after = keys[index + 1];
  return index < 0 || after === undefined ? null : { kind: 'move', key, after };
}

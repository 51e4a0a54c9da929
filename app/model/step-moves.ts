import type { PlanEdit } from './plan-edit.ts';
import type { Step } from './wash-plan.ts';

type Placed = Pick<Step, 'key' | 'kind'>;

/** A drying check goes with the wash it waits for; one she put in stands by itself. */
export const standsByItself = ({ key, kind }: Placed): boolean =>
  kind !== 'dry' || key.includes('/add-');

const movable = (steps: readonly Placed[]): string[] =>
  steps.filter(standsByItself).map(({ key }) => key);

/** One place earlier, drying checks not counted; null where it is the first. */
export function movedEarlier(steps: readonly Placed[], key: string): PlanEdit | null {
  const keys = movable(steps);
  const at = keys.indexOf(key);
  return at < 1 ? null : { kind: 'move', key, after: keys[at - 2] ?? null };
}

/** One place later; null where it is the last. */
export function movedLater(steps: readonly Placed[], key: string): PlanEdit | null {
  const keys = movable(steps);
  const at = keys.indexOf(key);
  const after = keys[at + 1];
  return at < 0 || after === undefined ? null : { kind: 'move', key, after };
}

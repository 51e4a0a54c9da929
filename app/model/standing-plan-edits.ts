import type { Decision } from './painting.ts';
import type { PlanEdit } from './plan-edit.ts';
import { standingDecisions } from './standing-decisions.ts';

/** Her changes of the steps that count, oldest first: those since all were last dropped. */
export function standingPlanEdits(decisions: readonly Decision[]): PlanEdit[] {
  const edits = standingDecisions(decisions, 'plan-edit').map(({ edit }) => edit);
  return edits.slice(edits.lastIndexOf(null) + 1).filter((edit) => edit !== null);
}

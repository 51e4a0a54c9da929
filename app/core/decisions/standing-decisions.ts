import type { Decision } from './painting.ts';
import type { PlanEdit } from './plan-edit.ts';

export type DecisionKind = Decision['kind'];
export type DecisionOf<K extends DecisionKind> = Extract<Decision, { kind: K }>;

/** Ids of what was taken back; a taking back that was itself taken back takes nothing back any more. */
export function takenBack(decisions: readonly Decision[]): ReadonlySet<string> {
  const gone = new Set<string>();
  for (const { id, undoes } of [...decisions].reverse())
    if (undoes !== undefined && !gone.has(id)) gone.add(undoes);
  return gone;
}

/** The decisions of some kinds that were not taken back, oldest first. */
export function standingDecisions<K extends DecisionKind>(
  decisions: readonly Decision[],
  ...kinds: readonly K[]
): DecisionOf<K>[] {
  const gone = takenBack(decisions);
  return decisions.filter(
    (decision): decision is DecisionOf<K> =>
      (kinds as readonly DecisionKind[]).includes(decision.kind) && !gone.has(decision.id),
  );
}

/** The last of them: the one that counts where only one can. */
export const lastDecision = <K extends DecisionKind>(
  decisions: readonly Decision[],
  ...kinds: readonly K[]
): DecisionOf<K> | undefined => standingDecisions(decisions, ...kinds).at(-1);

/** The edits of a list since all were last dropped, which is null. */
export const sinceDropped = <E>(edits: readonly (E | null)[]): E[] =>
  edits.slice(edits.lastIndexOf(null) + 1).filter((edit) => edit !== null);

/** Her changes of the steps that count, oldest first: those since all were last dropped. */
export const standingPlanEdits = (decisions: readonly Decision[]): PlanEdit[] =>
  sinceDropped(standingDecisions(decisions, 'plan-edit').map(({ edit }) => edit));

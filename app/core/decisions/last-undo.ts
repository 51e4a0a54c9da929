import type { Decision } from './painting.ts';
import { type DecisionKind, takenBack } from './standing-decisions.ts';

/**
 * The taking back that can be taken back in its turn, as long as nothing of these kinds was decided since: to be named
 * in `undoes` of a new one.
 */
export function lastUndo(
  decisions: readonly Decision[],
  ...kinds: readonly DecisionKind[]
): Decision | undefined {
  const gone = takenBack(decisions);
  const byId = new Map(decisions.map((decision) => [decision.id, decision]));
  const isOurs = ({ kind, undoes }: Decision): boolean =>
    kinds.includes(kind) || kinds.includes(byId.get(undoes ?? '')?.kind ?? 'undo');
  const last = decisions.findLast((decision) => !gone.has(decision.id) && isOurs(decision));
  return last?.kind === 'undo' ? last : undefined;
}

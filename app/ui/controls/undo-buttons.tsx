import { lastUndo } from '../../core/decisions/last-undo.ts';
import type { Decision, NewDecision } from '../../core/decisions/painting.ts';
import { type DecisionKind, lastDecision } from '../../core/decisions/standing-decisions.ts';
import { Button } from './button.tsx';

interface UndoButtonsProps {
  decisions: readonly Decision[];
  /** What is taken back: the last of these. */
  kinds: readonly DecisionKind[];
  onDecide: (decision: NewDecision) => void;
}

/** The last decision taken back, and done again: beside each other, so that neither has to be feared. */
export function UndoButtons({ decisions, kinds, onDecide }: UndoButtonsProps) {
  const last = lastDecision(decisions, ...kinds);
  const undone = lastUndo(decisions, ...kinds);
  return (
    <>
      <Button disabled={!last} onClick={() => last && onDecide({ kind: 'undo', undoes: last.id })}>
        Undo
      </Button>
      <Button
        disabled={!undone}
        onClick={() => undone && onDecide({ kind: 'undo', undoes: undone.id })}
      >
        Redo
      </Button>
    </>
  );
}

import type { ComparedPictures } from '../../core/compare/compare-sheet.ts';
import type { Advice } from '../../core/compare/comparison.ts';
import { rowsUnder, takenAdvice } from '../../core/compare/taken-advice.ts';
import type { Step } from '../../core/plan/plan.ts';
import { type SessionEvent, standingEvents } from '../../core/session/session-event.ts';
import type { SessionState } from '../../core/session/session-state.ts';
import type { Easel } from './easel.ts';

/** Taking advice of a comparison into the plan of this sheet, and leaving it out again. */
export interface AdviceTaking {
  taken(advice: Advice): boolean;
  take(advice: Advice): void;
  leaveOut(advice: Advice): void;
}

interface AdviceTakingNeeds {
  readonly easel: Pick<Easel, 'desk' | 'session' | 'log' | 'tell'>;
  readonly photoId: string;
  /** Key of the step that was compared. */
  readonly after: string;
  readonly pictures: Pick<ComparedPictures, 'size' | 'slotMap' | 'shapes'>;
}

/** The step that comes next: the one that stands, unless it is begun or is waited at. Null at the end. */
export function nextStepKey(
  { stepIndex, phase }: Pick<SessionState, 'stepIndex' | 'phase'>,
  steps: readonly Pick<Step, 'key'>[],
): string | null {
  return steps[phase === 'ready' ? stepIndex : stepIndex + 1]?.key ?? null;
}

export function createAdviceTaking(needs: AdviceTakingNeeds): AdviceTaking {
  const { easel, photoId, after, pictures } = needs;
  const lineOf = ({ mending, slot, at: [x, y] }: Advice): SessionEvent | undefined =>
    standingEvents(easel.log.value).find(
      ({ what }) =>
        what.kind === 'mended' &&
        what.photoId === photoId &&
        what.mending === mending &&
        what.slot === slot &&
        what.at[0] === x &&
        what.at[1] === y,
    );
  return {
    taken: (advice) => lineOf(advice) !== undefined,
    take(advice) {
      const desk = easel.desk.value;
      if (!desk || lineOf(advice)) return;
      const { plan, seen } = desk;
      const rows = rowsUnder(advice, pictures, seen.reading);
      const before = nextStepKey(easel.session.value, plan.steps);
      easel.tell({ kind: 'mended', photoId, ...takenAdvice(advice, after, before, rows, plan) });
    },
    leaveOut(advice) {
      const line = lineOf(advice);
      if (line) easel.tell({ kind: 'taken-back', events: [line.id] });
    },
  };
}

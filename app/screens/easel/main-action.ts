import type { Phase } from '../../model/session/session-state.ts';
import type { Step } from '../../model/wash-plan.ts';

/** What the large button says. */
export function mainAction(phase: Phase, step: Pick<Step, 'kind'>): string {
  if (phase === 'paused') return 'Go on';
  if (step.kind === 'dry') return 'It is bone dry';
  if (step.kind === 'last-look') return phase === 'painting' ? 'Finish' : 'Look';
  return phase === 'painting' ? 'Done' : 'Start';
}

import { minuteMs } from '../limits.ts';
import type { SessionState } from './session-state.ts';

/** Where a session stands, as it is told on the first screen. */
export interface Stand {
  /** The step that stands, from 1. */
  readonly step: number;
  readonly steps: number;
  /** How long it took; null while it is under way. */
  readonly minutes: number | null;
}

export function standOf(
  { phase, stepIndex, finishedAtMs }: Pick<SessionState, 'phase' | 'stepIndex' | 'finishedAtMs'>,
  steps: number,
): Stand {
  const minutes = Math.max(1, Math.round((finishedAtMs ?? 0) / minuteMs));
  return { step: stepIndex + 1, steps, minutes: phase === 'finished' ? minutes : null };
}

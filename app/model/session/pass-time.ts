import type { TimedStep } from './drying-clock.ts';
import { elapsedMs } from './elapsed-ms.ts';
import type { Moment } from './session-event.ts';
import type { Phase, SessionState, Spent } from './session-state.ts';

const nothing: Spent = { paintingMs: 0, waitingMs: 0 };

/** The state as it is at a later moment, nothing having happened but time. */
export function passTime(
  state: SessionState,
  steps: readonly TimedStep[],
  now: Moment,
): SessionState {
  const last = { wallMs: now.wallMs, monoMs: now.monoMs, bootId: now.bootId };
  const gone = state.last ? elapsedMs(state.last, now) : 0;
  const key = steps[state.stepIndex]?.key;
  const spent = key === undefined ? state.spent : withSpent(state.spent, key, state.phase, gone);
  return { ...state, last, atMs: state.atMs + gone, spent };
}

function withSpent(
  all: SessionState['spent'],
  key: string,
  phase: Phase,
  gone: number,
): SessionState['spent'] {
  const before = all[key] ?? nothing;
  if (phase === 'painting')
    return { ...all, [key]: { ...before, paintingMs: before.paintingMs + gone } };
  if (phase === 'drying')
    return { ...all, [key]: { ...before, waitingMs: before.waitingMs + gone } };
  return all;
}

import { lastToDry, type TimedStep } from './drying-clock.ts';
import { isGhostTap, rememberTap } from './ghost-tap.ts';
import { arriveAt, begin, brushDown, complete, finish } from './move-steps.ts';
import { passTime } from './pass-time.ts';
import type { EventBody, SessionEvent } from './session-event.ts';
import type { SessionState } from './session-state.ts';
import { seen, stillWet } from './watch-paper.ts';

/** The state after one more event. Never throws: what makes no sense where it comes changes nothing. */
export function applyEvent(
  state: SessionState,
  steps: readonly TimedStep[],
  event: SessionEvent,
): SessionState {
  const now = passTime(state, steps, event);
  if (isGhostTap(now, event.what)) return now;
  const after = rememberTap(act(now, steps, event), event.what);
  return { ...after, timer: lastToDry(after.clocks) };
}

function act(state: SessionState, steps: readonly TimedStep[], event: SessionEvent): SessionState {
  const { what, wallMs } = event;
  if (!concernsHere(state, steps, what)) return state;
  const started = { ...awake(state, what), startedAt: state.startedAt ?? wallMs };
  const step = steps[started.stepIndex];
  switch (what.kind) {
    case 'started':
      return started;
    case 'step-begun':
      return begin(started, steps, what.key);
    case 'painting-done':
      return step && started.phase === 'painting' ? brushDown(started, step) : started;
    case 'still-wet':
      return stillWet(started, steps, what.key);
    case 'shine-gone':
      return seen(started, what.key, 'shineGoneMs');
    case 'dry-now':
      return seen(started, what.key, 'dryMs');
    case 'step-done':
      return complete(started, steps, wallMs);
    case 'back':
      return stepBack(started, steps);
    case 'paused':
      return started.phase === 'paused'
        ? started
        : { ...started, phase: 'paused', resumesTo: started.phase };
    case 'resumed':
      return started;
    case 'finished':
      return finish(started, wallMs);
    case 'clock-moved':
    case 'note':
    case 'mix-changed':
      return state;
    default:
      // A log written by a later version of the app may hold kinds this one does not know.
      what satisfies never;
      return state;
  }
}

/** A tap that moves on from a step that no longer stands comes too late; so does most after the end. */
function concernsHere(state: SessionState, steps: readonly TimedStep[], what: EventBody): boolean {
  if (state.phase === 'finished' && what.kind !== 'back') return false;
  const moves = what.kind === 'painting-done' || what.kind === 'step-done' || what.kind === 'back';
  return !moves || what.key === steps[state.stepIndex]?.key;
}

/** Whatever she does at the easel ends a pause. */
function awake(state: SessionState, what: EventBody): SessionState {
  if (state.phase !== 'paused' || what.kind === 'paused') return state;
  return { ...state, phase: state.resumesTo };
}

/** From the end she comes back to the last step, from a step to the one before it. */
function stepBack(state: SessionState, steps: readonly TimedStep[]): SessionState {
  const index = state.phase === 'finished' ? state.stepIndex : Math.max(0, state.stepIndex - 1);
  return arriveAt(state, steps, index);
}

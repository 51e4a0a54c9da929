import { changeCircumstances } from './change-circumstances.ts';
import type { TimedStep } from './drying-clock.ts';
import { isGhostTap, rememberTap } from './ghost-tap.ts';
import { begin, beginAside, brushDown, complete, finish, stepBack } from './move-steps.ts';
import { passTime } from './pass-time.ts';
import { practise } from './practise.ts';
import type { EventBody, SessionEvent } from './session-event.ts';
import type { SessionState } from './session-state.ts';
import { waitedFor } from './waited-for.ts';
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
  return { ...after, timer: waitedFor(after, steps) };
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
      return what.aside ? beginAside(started, steps, what.key) : begin(started, steps, what.key);
    case 'stroke-down':
      return { ...started, strokeMs: started.atMs };
    case 'painting-done':
      return step && started.phase === 'painting' ? brushDown(started, step) : started;
    case 'still-wet':
      return stillWet(started, what.key);
    case 'shine-gone':
      return seen(started, steps, what.key, 'shine');
    case 'dry-now':
      return seen(started, steps, what.key, 'dry');
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
    case 'weather':
      return changeCircumstances(state, steps, { weather: what.weather });
    case 'paper':
      return changeCircumstances(state, steps, { paper: what.paper });
    case 'practise':
      return practise(state, steps, what.key, what.doing);
    case 'pace-forgotten': {
      const { clock, paper, wash } = what;
      return { ...state, lessons: [...state.lessons, { kind: 'forget', clock, paper, wash }] };
    }
    case 'clock-moved':
    case 'taken-back':
    case 'trouble':
    case 'note':
    case 'photo':
    case 'mix-changed':
    case 'scrap':
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

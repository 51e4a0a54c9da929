import { createDryingModel, type DryingModel } from '../drying/estimate-drying.ts';
import type { Lesson } from '../drying/learn-pace.ts';
import type { TimedStep } from './drying-clock.ts';
import { passTime } from './easel-time.ts';
import {
  begin,
  beginAside,
  brushDown,
  complete,
  currentClock,
  finish,
  stepBack,
} from './move-steps.ts';
import { type EventBody, type SessionEvent, standingEvents } from './session-event.ts';
import { freshState, type SessionState } from './session-state.ts';
import { changeCircumstances, noteOnClock, practiseOnScrap, stillWet } from './watch-paper.ts';

/** A wet finger taps twice: the same action again so soon is not meant (own). */
export const ghostTapMs = 400;

/** The button an event comes from (start and pause share one); null where a repeat is harmless or intended. */
function buttonOf(what: EventBody): string | null {
  switch (what.kind) {
    case 'paused':
    case 'resumed':
      return 'pause';
    case 'step-begun':
    case 'painting-done':
    case 'still-wet':
    case 'shine-gone':
    case 'dry-now':
    case 'step-done':
    case 'back':
      return what.kind;
    case 'practise':
      return `practise ${what.doing}`;
    default:
      return null;
  }
}

function isGhostTap(state: SessionState, what: EventBody): boolean {
  const button = buttonOf(what);
  const before = button === null ? undefined : state.taps[button];
  return before !== undefined && state.atMs - before < ghostTapMs;
}

function rememberTap(state: SessionState, what: EventBody): SessionState {
  const button = buttonOf(what);
  return button === null ? state : { ...state, taps: { ...state.taps, [button]: state.atMs } };
}

/** The state after one more event. Never throws: what makes no sense where it comes changes nothing. */
function applyEvent(
  state: SessionState,
  steps: readonly TimedStep[],
  event: SessionEvent,
  dryingModel: DryingModel,
): SessionState {
  const current = passTime(state, steps, event);
  if (isGhostTap(current, event.what)) return current;
  const after = rememberTap(act(current, steps, event, dryingModel), event.what);
  return { ...after, timer: currentClock(after, steps) };
}

function act(
  state: SessionState,
  steps: readonly TimedStep[],
  event: SessionEvent,
  dryingModel: DryingModel,
): SessionState {
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
      return step && started.phase === 'painting' ? brushDown(started, step, dryingModel) : started;
    case 'still-wet':
      return stillWet(started, what.key);
    case 'shine-gone':
      return noteOnClock(started, steps, what.key, 'shine');
    case 'dry-now':
      return noteOnClock(started, steps, what.key, 'dry');
    case 'step-done':
      return complete(started, steps, wallMs, dryingModel);
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
      return changeCircumstances(state, steps, { weather: what.weather }, dryingModel);
    case 'paper':
      return changeCircumstances(state, steps, { paper: what.paper }, dryingModel);
    case 'practise':
      return practiseOnScrap(state, steps, what.key, what.doing, dryingModel);
    case 'pace-forgotten': {
      const { clock, paper, wash } = what;
      return { ...state, lessons: [...state.lessons, { kind: 'forget', clock, paper, wash }] };
    }
    case 'clock-moved':
    case 'taken-back':
    case 'trouble':
    case 'note':
    case 'photo':
    case 'compared':
    case 'mended':
    case 'mix-changed':
    case 'scrap':
      return state;
    default:
      // A log written by a later version of the app may hold kinds this one does not know.
      what satisfies never;
      return state;
  }
}

/** False for a tap that comes too late: it leaves a step that is no longer current, or the session has ended. */
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

/** The log in order, each number once, without what she took back: written twice counts once. */
export function orderEvents(events: readonly SessionEvent[]): SessionEvent[] {
  const sorted = [...events].sort((a, b) => a.seq - b.seq);
  return [...standingEvents(sorted.filter((event, i) => event.seq !== sorted[i - 1]?.seq))];
}

/**
 * Where a session stands, from the plan's steps and the events of one session. `lessons` is what
 * earlier sessions taught the drying clocks. Who folds again and again hands in one `dryingModel`. Never
 * throws.
 */
export function foldSession(
  steps: readonly TimedStep[],
  events: readonly SessionEvent[],
  lessons: readonly Lesson[] = [],
  dryingModel: DryingModel = createDryingModel(),
): SessionState {
  const fresh: SessionState = { ...freshState, lessons };
  return orderEvents(events).reduce(
    (state, event) => applyEvent(state, steps, event, dryingModel),
    fresh,
  );
}

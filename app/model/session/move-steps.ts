import { leavesWet, startClock, type TimedStep } from './drying-clock.ts';
import type { SessionState } from './session-state.ts';

const without = (keys: readonly string[], key: string): string[] =>
  keys.filter((each) => each !== key);

/** Waiting needs no start: a drying check runs as soon as she comes to it. */
const onArrival = (step: TimedStep): 'drying' | 'ready' =>
  step.kind === 'dry' ? 'drying' : 'ready';

/** Brush down: the wash of this step dries from now on; an earlier wash of it counts no more. */
export function brushDown(state: SessionState, step: TimedStep): SessionState {
  if (!leavesWet(step)) return state;
  const others = state.clocks.filter((clock) => clock.key !== step.key);
  return { ...state, phase: 'drying', clocks: [...others, startClock(step, state.atMs)] };
}

/** Goes to a step, not begun. */
export function arriveAt(
  state: SessionState,
  steps: readonly TimedStep[],
  index: number,
): SessionState {
  const step = steps[index];
  if (!step) return state;
  return {
    ...state,
    stepIndex: index,
    phase: onArrival(step),
    finishedAt: null,
    finishedAtMs: null,
    doneKeys: without(state.doneKeys, step.key),
  };
}

export function begin(state: SessionState, steps: readonly TimedStep[], key: string): SessionState {
  const index = steps.findIndex((step) => step.key === key);
  const step = steps[index];
  if (!step) return state;
  const here = index === state.stepIndex;
  if (here && state.phase === 'painting') return state;
  const there = here
    ? { ...state, doneKeys: without(state.doneKeys, key) }
    : arriveAt(state, steps, index);
  return { ...there, phase: step.kind === 'dry' ? 'drying' : 'painting' };
}

export function complete(
  state: SessionState,
  steps: readonly TimedStep[],
  wallMs: number,
): SessionState {
  const step = steps[state.stepIndex];
  if (!step) return state;
  const dries = state.clocks.some((clock) => clock.key === step.key);
  const painted = state.phase === 'painting' || (state.phase === 'ready' && !dries);
  const wet = painted ? brushDown(state, step) : state;
  const done = { ...wet, doneKeys: [...without(wet.doneKeys, step.key), step.key] };
  if (state.stepIndex + 1 < steps.length) return arriveAt(done, steps, state.stepIndex + 1);
  return finish(done, wallMs);
}

export function finish(state: SessionState, wallMs: number): SessionState {
  return { ...state, phase: 'finished', finishedAt: wallMs, finishedAtMs: state.atMs };
}

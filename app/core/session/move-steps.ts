import type { DryingModel } from '../drying/estimate-drying.ts';
import { leavesWet } from '../plan/plan.ts';
import { type DryingClock, lastToDry, startClock, type TimedStep } from './drying-clock.ts';
import type { SessionState } from './session-state.ts';
import { takeBackDry } from './watch-paper.ts';

/**
 * The clock to show: at a drying check the clock of the wash before it, else the clock of the wet wash that dries
 * last. Null when nothing is wet.
 */
export function currentClock(state: SessionState, steps: readonly TimedStep[]): DryingClock | null {
  const check = steps[state.stepIndex];
  if (check?.kind === 'dry') {
    const wash = steps.slice(0, state.stepIndex).findLast(leavesWet);
    const clock = state.clocks.find(({ key, dryMs }) => key === wash?.key && dryMs === null);
    if (clock) return clock;
  }
  return lastToDry(state.clocks);
}

const without = (keys: readonly string[], key: string): string[] =>
  keys.filter((each) => each !== key);

/** Waiting needs no start: a drying check runs as soon as she comes to it. */
const onArrival = (step: TimedStep): 'drying' | 'ready' =>
  step.kind === 'dry' ? 'drying' : 'ready';

/** Brush down: the wash of this step dries from now on; an earlier wash of it counts no more. */
export function brushDown(
  state: SessionState,
  step: TimedStep,
  dryingModel: DryingModel,
): SessionState {
  if (!leavesWet(step)) return state;
  const others = state.clocks.filter((clock) => clock.key !== step.key);
  const clock = startClock(step, state.atMs, state, dryingModel);
  return { ...state, phase: 'drying', strokeMs: null, clocks: [...others, clock] };
}

/** Goes to a step, not begun. */
function arriveAt(state: SessionState, steps: readonly TimedStep[], index: number): SessionState {
  const step = steps[index];
  if (!step) return state;
  return {
    ...state,
    stepIndex: index,
    phase: onArrival(step),
    finishedAt: null,
    finishedAtMs: null,
    doneKeys: without(state.doneKeys, step.key),
    aheadKeys: without(state.aheadKeys, step.key),
    strokeMs: null,
    waitingKey: null,
  };
}

export function begin(state: SessionState, steps: readonly TimedStep[], key: string): SessionState {
  const index = steps.findIndex((step) => step.key === key);
  const step = steps[index];
  if (!step) return state;
  const isCurrent = index === state.stepIndex;
  if (isCurrent && state.phase === 'painting') return state;
  const there = isCurrent
    ? { ...state, doneKeys: without(state.doneKeys, key) }
    : arriveAt(state, steps, index);
  return { ...there, phase: step.kind === 'dry' ? 'drying' : 'painting' };
}

/** Goes to work elsewhere on the sheet; the step that stands waits. */
export function beginAside(
  state: SessionState,
  steps: readonly TimedStep[],
  key: string,
): SessionState {
  const waitingKey = state.waitingKey ?? steps[state.stepIndex]?.key ?? null;
  const there = begin(state, steps, key);
  return there === state || waitingKey === key ? there : { ...there, waitingKey };
}

export function complete(
  state: SessionState,
  steps: readonly TimedStep[],
  wallMs: number,
  dryingModel: DryingModel,
): SessionState {
  const step = steps[state.stepIndex];
  if (!step) return state;
  const dries = state.clocks.some((clock) => clock.key === step.key);
  const painted = state.phase === 'painting' || (state.phase === 'ready' && !dries);
  const wet = painted ? brushDown(state, step, dryingModel) : state;
  const done = { ...wet, doneKeys: [...without(wet.doneKeys, step.key), step.key] };
  const waiting = steps.findIndex(({ key }) => key === state.waitingKey);
  if (waiting >= 0)
    return arriveAt({ ...done, aheadKeys: [...done.aheadKeys, step.key] }, steps, waiting);
  const next = steps.findIndex(
    ({ key }, i) => i > state.stepIndex && !(done.aheadKeys.includes(key) && isDone(done, key)),
  );
  return next >= 0 ? arriveAt(done, steps, next) : finish(done, wallMs);
}

const isDone = (state: SessionState, key: string): boolean => state.doneKeys.includes(key);

/**
 * From the end she comes back to the last step, from work elsewhere to the step that waits, from a
 * step to the one before it. Back at a drying check, what was said to be dry there is not.
 */
export function stepBack(state: SessionState, steps: readonly TimedStep[]): SessionState {
  const waiting = steps.findIndex(({ key }) => key === state.waitingKey);
  if (waiting >= 0) return arriveAt(state, steps, waiting);
  const index = state.phase === 'finished' ? state.stepIndex : Math.max(0, state.stepIndex - 1);
  const back = arriveAt(state, steps, index);
  const wash = steps[index]?.kind === 'dry' && steps.slice(0, index).findLast(leavesWet);
  return wash && index < state.stepIndex ? takeBackDry(back, wash.key) : back;
}

export function finish(state: SessionState, wallMs: number): SessionState {
  return { ...state, phase: 'finished', finishedAt: wallMs, finishedAtMs: state.atMs };
}

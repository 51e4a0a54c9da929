import {
  type DryingClock,
  extendClock,
  leavesWet,
  type TimedStep,
  unplannedClock,
  unplannedMinutes,
} from './drying-clock.ts';
import type { SessionState } from './session-state.ts';

/** The clock she speaks of: that of the step's own wash, else of what dries last. */
function clockOf(state: SessionState, key: string): DryingClock | null {
  return state.clocks.find((clock) => clock.key === key && clock.dryMs === null) ?? state.timer;
}

function replaced(state: SessionState, clock: DryingClock): SessionState {
  const others = state.clocks.filter((each) => each.key !== clock.key);
  return { ...state, clocks: [...others, clock] };
}

/** What she saw on the sheet, noted on the clock it is about; nothing wet, nothing to note. */
export function seen(
  state: SessionState,
  key: string,
  what: 'shineGoneMs' | 'dryMs',
): SessionState {
  const clock = clockOf(state, key);
  if (!clock || clock[what] !== null) return state;
  return replaced(state, { ...clock, [what]: state.atMs });
}

/** Still wet: the wait is longer, also when the plan or she thought it dry. */
export function stillWet(
  state: SessionState,
  steps: readonly TimedStep[],
  key: string,
): SessionState {
  const waiting = { ...state, phase: state.phase === 'ready' ? 'drying' : state.phase } as const;
  const clock = clockOf(state, key) ?? state.clocks.at(-1);
  if (!clock) return replaced(waiting, unplannedClock(key, state.atMs));
  const planned = steps.find((step) => step.key === clock.key);
  const high = planned && leavesWet(planned) ? planned.dryMinutes[1] : unplannedMinutes[1];
  return replaced(waiting, extendClock(clock, high, state.atMs));
}

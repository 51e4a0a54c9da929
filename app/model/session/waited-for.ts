import { type DryingClock, lastToDry, leavesWet, type TimedStep } from './drying-clock.ts';
import type { SessionState } from './session-state.ts';

/**
 * The clock that matters now: at a drying check that of the wash before it, else of what is still
 * wet the one that dries last. Null when nothing is wet.
 */
export function waitedFor(state: SessionState, steps: readonly TimedStep[]): DryingClock | null {
  const check = steps[state.stepIndex];
  if (check?.kind === 'dry') {
    const wash = steps.slice(0, state.stepIndex).findLast(leavesWet);
    const clock = state.clocks.find(({ key, dryMs }) => key === wash?.key && dryMs === null);
    if (clock) return clock;
  }
  return lastToDry(state.clocks);
}

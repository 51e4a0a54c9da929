import type { PaperChoice } from '../drying/paper-choice.ts';
import type { Weather } from '../drying/weather.ts';
import type { Range } from '../lab.ts';
import { courseAt } from './course-at.ts';
import type { DryingClock, TimedStep } from './drying-clock.ts';
import { reckonDrying } from './reckon-drying.ts';
import type { SessionState } from './session-state.ts';

interface Change {
  readonly weather?: Weather;
  readonly paper?: PaperChoice;
}

/**
 * Other air, another paper: what is still wet dries at the new rate from now on. What is left of
 * every wait is stretched or shortened; what has gone by counts as it went.
 */
export function changeCircumstances(
  state: SessionState,
  steps: readonly TimedStep[],
  change: Change,
): SessionState {
  const after = { ...state, ...change };
  const clocks = state.clocks.map((clock) => {
    const step = steps.find(({ key }) => key === clock.key);
    return step && clock.dryMs === null ? atNewRate(clock, step, state, after) : clock;
  });
  return { ...after, clocks };
}

function atNewRate(
  clock: DryingClock,
  step: TimedStep,
  before: SessionState,
  after: SessionState,
): DryingClock {
  const { atMs } = before;
  const was = reckonDrying(step, before);
  const is = reckonDrying(step, after);
  const { course } = clock;
  const shine = stretched([clock.shineLowMs, clock.shineHighMs], was.shineMinutes, is.shineMinutes);
  const dry = stretched([clock.endsLowMs, clock.endsHighMs], was.dryMinutes, is.dryMinutes);
  return {
    ...clock,
    shineLowMs: shine[0],
    shineHighMs: shine[1],
    endsLowMs: dry[0],
    endsHighMs: dry[1],
    course: course &&
      is.model && {
        sinceMs: atMs,
        shineGone: partGone(courseAt(course, 'shine', atMs)),
        dryGone: partGone(courseAt(course, 'dry', atMs)),
        model: is.model,
      },
  };

  function stretched([low, high]: Range, old: Range, now: Range): Range {
    const end = (at: number, i: 0 | 1): number =>
      at <= atMs || old[i] <= 0 ? at : atMs + ((at - atMs) * now[i]) / old[i];
    const newLow = end(low, 0);
    return [newLow, Math.max(newLow, end(high, 1))];
  }
}

const partGone = (part: number): number => (Number.isFinite(part) ? part : 0);

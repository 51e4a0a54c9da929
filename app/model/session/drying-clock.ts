import type { Range } from '../lab.ts';
import type { Step } from '../wash-plan.ts';

export type TimedStep = Pick<Step, 'key' | 'kind' | 'paintMinutes' | 'shineMinutes' | 'dryMinutes'>;

const minuteMs = 60_000;

/** A wash drying on the sheet, kept as end times in ms of the session: derived, never counted down. */
export interface DryingClock {
  /** The step whose wash it is. */
  readonly key: string;
  readonly startedMs: number;
  readonly shineLowMs: number;
  readonly shineHighMs: number;
  readonly endsLowMs: number;
  readonly endsHighMs: number;
  /** When she said the shine had gone, or that it was dry. */
  readonly shineGoneMs: number | null;
  readonly dryMs: number | null;
}

/** Whether a step leaves the sheet wet. A drying check waits for the wash before it. */
export const leavesWet = (step: TimedStep): boolean =>
  step.kind !== 'dry' && step.dryMinutes[1] > 0;

/** Both clocks from brush down. */
export function startClock(step: TimedStep, atMs: number): DryingClock {
  return clockOf(step.key, step.shineMinutes, step.dryMinutes, atMs);
}

function clockOf(key: string, shine: Range, dry: Range, atMs: number): DryingClock {
  return {
    key,
    startedMs: atMs,
    shineLowMs: atMs + shine[0] * minuteMs,
    shineHighMs: atMs + shine[1] * minuteMs,
    endsLowMs: atMs + dry[0] * minuteMs,
    endsHighMs: atMs + dry[1] * minuteMs,
    shineGoneMs: null,
    dryMs: null,
  };
}

/**
 * She found it still wet: the estimate was short. A third of the planned upper bound is added, and
 * the next look is proposed after half of that (own rule, no source).
 */
export function extendClock(clock: DryingClock, plannedHigh: number, atMs: number): DryingClock {
  const added = (plannedHigh * minuteMs) / 3;
  return {
    ...clock,
    endsLowMs: Math.max(clock.endsLowMs, atMs + added / 2),
    endsHighMs: Math.max(clock.endsHighMs, atMs) + added,
    dryMs: null,
  };
}

/** For a sheet she finds wet though the plan put nothing wet down: minutes (own guess). */
export const unplannedMinutes: Range = [5, 15];

export function unplannedClock(key: string, atMs: number): DryingClock {
  return clockOf(key, [0, 0], unplannedMinutes, atMs);
}

/** The wash that keeps her waiting longest, or null when all is dry. */
export function lastToDry(clocks: readonly DryingClock[]): DryingClock | null {
  let last: DryingClock | null = null;
  for (const clock of clocks) {
    if (clock.dryMs === null && (!last || clock.endsHighMs > last.endsHighMs)) last = clock;
  }
  return last;
}

import type { DryingClock } from './drying-clock.ts';
import type { Moment } from './session-event.ts';

/**
 * ready: the prompt is read, the brush not yet up. painting: she works at the step. drying: she
 * waits for the sheet. paused: she is away; what is wet dries on all the same.
 */
export type Phase = 'ready' | 'painting' | 'drying' | 'paused' | 'finished';

export interface Spent {
  readonly paintingMs: number;
  readonly waitingMs: number;
}

/** Where a session stands after its last event: folded from the log, never kept. */
export interface SessionState {
  readonly phase: Phase;
  /** What a pause returns to. */
  readonly resumesTo: Phase;
  /** Index into the plan's steps. */
  readonly stepIndex: number;
  /** Wall time of the start and of the end, ms since 1970; null before. */
  readonly startedAt: number | null;
  readonly finishedAt: number | null;
  /** The end again, in time of the session. */
  readonly finishedAtMs: number | null;
  /** Time of the session at its last event, ms from its first; all clocks count in it. */
  readonly atMs: number;
  readonly last: Moment | null;
  /** By step key. */
  readonly spent: Readonly<Record<string, Spent>>;
  readonly doneKeys: readonly string[];
  readonly clocks: readonly DryingClock[];
  /** The clock that matters now: of what is still wet, what dries last. */
  readonly timer: DryingClock | null;
  /** When each action was last taken, session ms: guards against ghost taps. */
  readonly taps: Readonly<Record<string, number>>;
}

export const freshState: SessionState = {
  phase: 'ready',
  resumesTo: 'ready',
  stepIndex: 0,
  startedAt: null,
  finishedAt: null,
  finishedAtMs: null,
  atMs: 0,
  last: null,
  spent: {},
  doneKeys: [],
  clocks: [],
  timer: null,
  taps: {},
};

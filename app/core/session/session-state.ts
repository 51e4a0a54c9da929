import type { Lesson } from '../drying/learn-pace.ts';
import { type PaperChoice, usualPaper } from '../drying/paper-choice.ts';
import { roomWeather, type Weather } from '../drying/weather.ts';
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

/** A step tried on a scrap: session ms, null before. */
interface Practice {
  readonly key: string;
  readonly begunMs: number;
  readonly downMs: number | null;
  readonly shineGoneMs: number | null;
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
  readonly weather: Weather;
  readonly paper: PaperChoice;
  /** All that has taught the drying clocks so far, earlier sessions first. */
  readonly lessons: readonly Lesson[];
  /** When the stroke to be softened was down, session ms; null when there is none. */
  readonly strokeMs: number | null;
  readonly practice: Practice | null;
  /** The step that waits while she works elsewhere on the sheet. */
  readonly waitingKey: string | null;
  /** Steps done ahead of their turn: they are passed over when it comes. */
  readonly aheadKeys: readonly string[];
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
  weather: roomWeather,
  paper: usualPaper,
  lessons: [],
  strokeMs: null,
  practice: null,
  waitingKey: null,
  aheadKeys: [],
};

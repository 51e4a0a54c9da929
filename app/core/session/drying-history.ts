import type { Range } from '../colour/lab.ts';
import { createDryingModel, type DryingModel } from '../drying/estimate-drying.ts';
import type { DryingClockName, Lesson } from '../drying/learn-pace.ts';
import type { PaperChoice } from '../drying/paper-choice.ts';
import { minuteMs } from '../limits.ts';
import type { TitleSaid } from '../words/plan/titles.ts';
import type { DryingClock, TimedStep } from './drying-clock.ts';
import { foldSession } from './fold-session.ts';
import type { SessionEvent } from './session-event.ts';
import type { SessionState } from './session-state.ts';

/** A session of any painting: the steps it went by and its log. */
export interface PastSession {
  readonly sessionId: string;
  readonly paintingId: string;
  readonly steps: readonly (TimedStep & { readonly title?: TitleSaid | string })[];
  readonly events: readonly SessionEvent[];
}

/** What was reckoned for one wash at brush down, and what she then saw. Minutes. */
export interface HistoryRow {
  readonly sessionId: string;
  /** Wall time the session began, ms since 1970. */
  readonly startedAt: number;
  readonly title: TitleSaid | string;
  readonly clock: DryingClockName;
  readonly reckoned: Range;
  readonly real: number;
}

export interface DryingHistory {
  /** In order of time; what the next session starts from. */
  readonly lessons: readonly Lesson[];
  readonly rows: readonly HistoryRow[];
  /** The paper of the last session; null before the first. */
  readonly paper: PaperChoice | null;
}

const beganAt = ({ events }: PastSession): number => events[0]?.wallMs ?? 0;

/** Sessions that began before the one whose first line this is; all of them before it has one. */
export const beganBefore =
  (first: SessionEvent | undefined) =>
  ({ events }: PastSession): boolean =>
    !first || (events[0]?.wallMs ?? Number.POSITIVE_INFINITY) < first.wallMs;

/** All sessions in the order they began, each with what those before it had taught. */
export function dryingHistory(
  sessions: readonly PastSession[],
  dryingModel: DryingModel = createDryingModel(),
): DryingHistory {
  let lessons: readonly Lesson[] = [];
  let paper: PaperChoice | null = null;
  const rows: HistoryRow[] = [];
  for (const session of [...sessions].sort((a, b) => beganAt(a) - beganAt(b))) {
    if (session.events.length === 0) continue;
    const state = foldSession(session.steps, session.events, lessons, dryingModel);
    lessons = state.lessons;
    paper = state.paper;
    rows.push(...rowsOf(session, state));
  }
  return { lessons, rows, paper };
}

function rowsOf(session: PastSession, state: SessionState): HistoryRow[] {
  const { sessionId, steps } = session;
  const startedAt = beganAt(session);
  return state.clocks.flatMap((wet) => {
    const step = steps.find(({ key }) => key === wet.key);
    const row = (clock: DryingClockName, reckoned: Range, endMs: number | null): HistoryRow[] =>
      endMs === null || !step
        ? []
        : [
            {
              sessionId,
              startedAt,
              title: titleOf(step),
              clock,
              reckoned,
              real: since(wet, endMs),
            },
          ];
    return [
      ...row('shine', wet.reckoned.shineMinutes, wet.shineGoneMs),
      ...row('dry', wet.reckoned.dryMinutes, wet.dryMs),
    ];
  });
}

const titleOf = ({ title, key }: PastSession['steps'][number]): HistoryRow['title'] => title ?? key;

const since = (clock: DryingClock, atMs: number): number => (atMs - clock.startedMs) / minuteMs;

import { type DryingModel, modelRange } from '../drying/estimate-drying.ts';
import { geometricMiddle } from '../drying/learn-pace.ts';
import { minuteMs } from '../limits.ts';
import { type DryingClock, openMinutes, type TimedStep } from './drying-clock.ts';
import { elapsedMs, type Moment } from './session-event.ts';
import type { Phase, SessionState, Spent } from './session-state.ts';

const nothing: Spent = { paintingMs: 0, waitingMs: 0 };

/** Nobody paints so long at one step without a tap: she was away, or the clock was put forward (own). */
const longestSittingMs = 12 * 60 * minuteMs;

/** Advances the state to a later moment at which nothing but time has passed. */
export function passTime(
  state: SessionState,
  steps: readonly TimedStep[],
  moment: Moment,
): SessionState {
  const last = { wallMs: moment.wallMs, monoMs: moment.monoMs, bootId: moment.bootId };
  const gone = state.last ? elapsedMs(state.last, moment) : 0;
  const key = steps[state.stepIndex]?.key;
  const spent = key === undefined ? state.spent : withSpent(state.spent, key, state.phase, gone);
  return { ...state, last, atMs: state.atMs + gone, spent };
}

function withSpent(
  all: SessionState['spent'],
  key: string,
  phase: Phase,
  gone: number,
): SessionState['spent'] {
  const before = all[key] ?? nothing;
  if (phase === 'painting' && gone <= longestSittingMs)
    return { ...all, [key]: { ...before, paintingMs: before.paintingMs + gone } };
  if (phase === 'drying')
    return { ...all, [key]: { ...before, waitingMs: before.waitingMs + gone } };
  return all;
}

/** All in ms and never negative; `overMs` is how long the upper end has been passed. */
export interface TimeLeft {
  readonly lowMs: number;
  readonly highMs: number;
  readonly overMs: number;
}

/** Of a wash that dries: also until it is likely to be dry. */
export interface DryingLeft extends TimeLeft {
  readonly likelyMs: number;
}

export interface EaselTime {
  /** Time of the session now. */
  readonly atMs: number;
  /** The clock on the wall now, ms since 1970. */
  readonly wallMs: number;
  /** Time painted at the step that stands, pauses left out. */
  readonly paintingMs: number;
  /** Until the planned painting time of the step is used up. */
  readonly painting: TimeLeft;
  /** Until the shine goes and until bone dry, of `state.timer`; null when nothing is wet. */
  readonly shine: TimeLeft | null;
  readonly drying: DryingLeft | null;
  /** While the edge of the stroke that is down can be softened; null without one. */
  readonly open: TimeLeft | null;
}

/** Before the first stroke nothing presses. */
export const isGettingReady = ({ kind }: Pick<TimedStep, 'kind'>): boolean =>
  kind === 'prepare' || kind === 'puddles' || kind === 'transfer';

/** Steps that are done when she says so: what is got ready, and the last look. */
export const hasNoBeginning = ({ kind }: Pick<TimedStep, 'kind'>): boolean =>
  kind === 'last-look' || isGettingReady({ kind });

/** Whether a clock runs while she works at a step. */
export const isTimed = ({
  kind,
  paintMinutes,
}: Pick<TimedStep, 'kind' | 'paintMinutes'>): boolean =>
  paintMinutes[1] > 0 && !hasNoBeginning({ kind });

function timeLeft(endsLowMs: number, endsHighMs: number, atMs: number): TimeLeft {
  return {
    lowMs: Math.max(0, endsLowMs - atMs),
    highMs: Math.max(0, endsHighMs - atMs),
    overMs: Math.max(0, atMs - endsHighMs),
  };
}

/** All clocks of the easel, computed from moments, not counted, so they are right at once after sleep or reload. */
export function easelTime(
  state: SessionState,
  steps: readonly TimedStep[],
  moment: Moment,
  dryingModel: DryingModel = modelRange,
): EaselTime {
  const { atMs, spent, timer } = passTime(state, steps, moment);
  const step = steps[state.stepIndex];
  const paintingMs = step ? (spent[step.key]?.paintingMs ?? 0) : 0;
  const [low, high] = step?.paintMinutes ?? [0, 0];
  return {
    atMs,
    wallMs: moment.wallMs,
    paintingMs,
    painting: timeLeft(low * minuteMs, high * minuteMs, paintingMs),
    shine: shineLeft(timer, atMs),
    drying: timer && dryingLeft(timer, atMs),
    open: openLeft(state, atMs, dryingModel),
  };
}

/** Likely is the middle of the range, as ratios go: drying times scatter by factors. */
function dryingLeft({ startedMs, endsLowMs, endsHighMs }: DryingClock, atMs: number): DryingLeft {
  const likelyMs = startedMs + geometricMiddle([endsLowMs - startedMs, endsHighMs - startedMs]);
  return {
    ...timeLeft(endsLowMs, endsHighMs, atMs),
    likelyMs: Math.max(0, likelyMs - atMs),
  };
}

function shineLeft(timer: DryingClock | null, atMs: number): TimeLeft | null {
  if (!timer || timer.shineGoneMs !== null) return null;
  return timeLeft(timer.shineLowMs, timer.shineHighMs, atMs);
}

function openLeft(state: SessionState, atMs: number, dryingModel: DryingModel): TimeLeft | null {
  if (state.strokeMs === null || state.phase !== 'painting') return null;
  const [low, high] = openMinutes(state, dryingModel);
  return timeLeft(state.strokeMs + low * minuteMs, state.strokeMs + high * minuteMs, atMs);
}

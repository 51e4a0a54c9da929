import type { Point } from '../colour/lab.ts';
import type { Mending, SheetWetness } from '../compare/comparison.ts';
import type { Corners } from '../compare/homography.ts';
import type { TakenAdvice } from '../compare/taken-advice.ts';
import type { DryingClockName } from '../drying/learn-pace.ts';
import type { PaperChoice } from '../drying/paper-choice.ts';
import type { WaterKind } from '../drying/water.ts';
import type { Weather } from '../drying/weather.ts';
import type { Wetness } from '../drying/wetness.ts';
import { minuteMs } from '../limits.ts';
import type { ChangedAmounts } from '../paint/former-amounts.ts';
import type { Part } from '../paint/mix.ts';
import type { ScrapHue, ScrapVerdict } from '../paint/paint-at-fault.ts';
import type { Trouble } from './trouble.ts';

/**
 * A point in time as the device knows it. `wallMs` is the clock on the wall (ms since 1970) and can
 * jump; `monoMs` only goes on, but may stop while the device sleeps, and is worth something only
 * within one `bootId` (one life of the page).
 */
export interface Moment {
  readonly wallMs: number;
  readonly monoMs: number;
  readonly bootId: string;
}

/** What stays of a comparison. */
export interface SheetMeasures {
  readonly engine: string;
  readonly wetness: Exclude<SheetWetness, 'shiny'>;
  /** Where the sheet was found, and where she says there is bare paper: shares of the photo's sides. */
  readonly corners: Corners;
  readonly bare: readonly Point[];
  /** Share of the measured area within 4 L* of what was planned. */
  readonly within4: number;
  readonly whitesLost: number;
  /** Measured less expected, L*. */
  readonly bands: readonly { readonly band: number; readonly difference: number }[];
  readonly slots: readonly {
    readonly slot: number;
    readonly share: number;
    readonly difference: number;
  }[];
  readonly advice: readonly {
    readonly mending: Mending;
    readonly slot: number;
    readonly at: Point;
    readonly difference: number;
  }[];
}

/** What she did. `key` is that of the step she was looking at; one tap may append several bodies. */
export type EventBody =
  | { readonly kind: 'started' }
  /** `aside`: done elsewhere on the sheet while another step waits; then she comes back to that. */
  | { readonly kind: 'step-begun'; readonly key: string; readonly aside?: boolean }
  /** A stroke whose edge is to be softened is down: its open time starts. */
  | { readonly kind: 'stroke-down'; readonly key: string }
  /** Brush down: the drying clocks start. */
  | { readonly kind: 'painting-done'; readonly key: string }
  | { readonly kind: 'still-wet'; readonly key: string }
  | { readonly kind: 'shine-gone'; readonly key: string }
  | { readonly kind: 'dry-now'; readonly key: string }
  | { readonly kind: 'step-done'; readonly key: string }
  /** Leaves the step `key` for the one before it. */
  | { readonly kind: 'back'; readonly key: string }
  | { readonly kind: 'paused' }
  | { readonly kind: 'resumed' }
  /** The wall clock was seen to move by that much against the monotonic one; an anchor, no more. */
  | { readonly kind: 'clock-moved'; readonly byMs: number }
  | { readonly kind: 'note'; readonly text: string }
  /** A photo for the record, kept before this line; `key` is the step it was taken at. */
  | { readonly kind: 'photo'; readonly photoId: string; readonly key: string }
  /** That photo beside what was planned after the step `key`, and what was measured; told anew it replaces the one before. */
  | ({ readonly kind: 'compared'; readonly photoId: string; readonly key: string } & SheetMeasures)
  /** A piece of that comparison's advice she took into the plan of this sheet. */
  | ({ readonly kind: 'mended'; readonly photoId: string } & TakenAdvice)
  /** The air from now on, and what lies under the sheet. */
  | { readonly kind: 'weather'; readonly weather: Weather }
  | { readonly kind: 'paper'; readonly paper: PaperChoice }
  | {
      readonly kind: 'trouble';
      readonly key: string;
      readonly trouble: Trouble;
      /** How wet the sheet was taken to be, which decided the remedy. */
      readonly wetness: Wetness;
    }
  /** The step `key` tried on a scrap. */
  | { readonly kind: 'practise'; readonly key: string; readonly doing: Practising }
  /** What one clock learned on one paper from one kind of wash counts no more. */
  | {
      readonly kind: 'pace-forgotten';
      readonly clock: DryingClockName;
      readonly paper: PaperChoice;
      readonly wash: WaterKind;
    }
  | ({ readonly kind: 'mix-changed'; readonly mix: string } & ChangedAmounts)
  /**
   * A puddle brushed on a scrap and compared when dry: its depth, and what its colour has too much of. Neither: what
   * was told last is withdrawn.
   */
  | {
      readonly kind: 'scrap';
      readonly parts: readonly Part[];
      readonly load: number;
      readonly verdict: ScrapVerdict['depth'];
      readonly hue?: ScrapHue;
    }
  /** These lines of the log, by id, count no more: she took a tap back. */
  | { readonly kind: 'taken-back'; readonly events: readonly string[] }
  | { readonly kind: 'finished' };

export type Practising = 'begun' | 'brush-down' | 'shine-gone' | 'ended';

/** One line of the log; `seq` counts 0, 1, 2 ... within the session. Never changed once kept. */
export interface SessionEvent extends Moment {
  readonly id: string;
  readonly sessionId: string;
  readonly seq: number;
  readonly planId: string;
  readonly what: EventBody;
}

/** A longer gap is a clock set wrong, or all the same: by then everything has dried (own). */
const longestGapMs = 30 * 24 * 60 * minuteMs;

/**
 * Time gone by between two moments, ms, never negative, at most 30 days. A wall clock that jumped forward counts as
 * sleep (the monotonic clock stops then); one set back does not count. Across lives of the page
 * only the wall clock is left. Source: W3C High Resolution Time (the clock may stop in sleep).
 */
export function elapsedMs(from: Moment, to: Moment): number {
  const wall = to.wallMs - from.wallMs;
  const mono = from.bootId === to.bootId ? to.monoMs - from.monoMs : 0;
  const gone = Math.max(0, Number.isFinite(wall) ? wall : 0, Number.isFinite(mono) ? mono : 0);
  return Math.min(gone, longestGapMs);
}

/** Smaller differences are the clocks' own wander. */
const wanderMs = 2000;

/**
 * By how much the wall clock was set back between two moments of one life of the page: negative ms,
 * or 0. Worth a 'clock-moved' event, so that a later reload still knows where time stood.
 */
export function clockSetBackMs(from: Moment, to: Moment): number {
  if (from.bootId !== to.bootId) return 0;
  const drift = to.wallMs - from.wallMs - (to.monoMs - from.monoMs);
  return drift < -wanderMs ? drift : 0;
}

/** The log without what she took back. The lines stay in the log; they only count no more. */
export function standingEvents(events: readonly SessionEvent[]): readonly SessionEvent[] {
  const gone = new Set<string>();
  // One that was itself taken back takes nothing back any more.
  for (const { id, what } of [...events].reverse())
    if (what.kind === 'taken-back' && !gone.has(id)) for (const each of what.events) gone.add(each);
  return gone.size > 0 ? events.filter(({ id }) => !gone.has(id)) : events;
}

/** What she can take back. */
const acts = [
  ...(['step-begun', 'stroke-down', 'painting-done', 'step-done', 'scrap', 'still-wet'] as const),
  ...([
    'shine-gone',
    'dry-now',
    'back',
    'paused',
    'resumed',
    'photo',
    'compared',
    'mended',
  ] as const),
] as const satisfies readonly EventBody['kind'][];
export type Act = (typeof acts)[number];

const actOf = ({ kind }: EventBody): Act | undefined => acts.find((act) => act === kind);

export interface LastAct {
  /** Ids of all that this one tap appended. */
  readonly events: readonly string[];
  readonly act: Act;
}

/** The tap that was taken back last, as long as she has done nothing since; `events` is to be taken back in its turn. */
export function lastTakenBack(log: readonly SessionEvent[]): LastAct | null {
  const last = standingEvents(log).findLast(
    ({ what }) => actOf(what) !== undefined || isAboutActs(log, what),
  );
  if (last?.what.kind !== 'taken-back') return null;
  const { events } = last.what;
  const told = lastAct(log.filter(({ id }) => events.includes(id)));
  return told && { events: [last.id], act: told.act };
}

const isAboutActs = (log: readonly SessionEvent[], what: EventBody): boolean =>
  what.kind === 'taken-back' &&
  log.some((event) => actOf(event.what) !== undefined && what.events.includes(event.id));

/** The last tap that can be taken back; null where there is none. */
export function lastAct(log: readonly SessionEvent[]): LastAct | null {
  const acts = standingEvents(log).filter(({ what }) => actOf(what));
  const last = acts.at(-1);
  if (!last) return null;
  const atOnce = acts.filter(
    ({ wallMs, monoMs, bootId }) =>
      wallMs === last.wallMs && monoMs === last.monoMs && bootId === last.bootId,
  );
  // A step done as soon as begun was one tap on 'Done'.
  const told = atOnce.find(({ what }) => what.kind !== 'step-begun') ?? last;
  const act = actOf(told.what);
  return act ? { events: atOnce.map(({ id }) => id), act } : null;
}

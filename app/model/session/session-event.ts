import type { DryingClockName } from '../drying/learn-pace.ts';
import type { PaperChoice } from '../drying/paper-choice.ts';
import type { WaterKind } from '../drying/water-of.ts';
import type { Weather } from '../drying/weather.ts';
import type { Part } from '../part.ts';
import type { Trouble } from '../trouble.ts';
import type { Wetness } from '../wetness.ts';

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
  | {
      readonly kind: 'mix-changed';
      readonly mix: string;
      readonly parts: readonly Part[];
      readonly load: number;
    }
  /** A puddle brushed on a scrap and compared when dry; null: what was told last is withdrawn. */
  | {
      readonly kind: 'scrap';
      readonly parts: readonly Part[];
      readonly load: number;
      readonly verdict: 'weaker' | 'right' | 'stronger' | null;
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

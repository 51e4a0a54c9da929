import type { Touch } from '../../../../app/model/touch.ts';
import type { WashInHand } from './wash-in-hand.ts';

/** A technique the reading calls for. */
export interface Called {
  readonly touch: Touch;
  /** Share of the sheet it is about, 0..1: what is about most of it is said first. */
  readonly share: number;
  /** She has decided it herself: it is never left out. */
  readonly hers?: boolean;
}

/** Looks whether a wash calls for one technique; null where it does not. */
export type CallFor = (wash: WashInHand) => Called | null;

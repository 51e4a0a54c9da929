import type { Point } from './lab.ts';
import type { ReserveSummary, Slot } from './slot.ts';
import type { CutStroke } from './stroke-on-photo.ts';

/** What her brush does: keep the paper white there, or paint over a white. */
export type WhiteMode = 'keep' | 'paint';

export interface WhiteStroke extends CutStroke {
  readonly mode: WhiteMode;
}

/**
 * How a white is kept: the brush goes round it; masking fluid covers it; or it is painted over and
 * comes back at the end, by opaque white or by scraping.
 */
export type WhiteWay = 'round' | 'mask' | 'last';

export const whiteWays: readonly WhiteWay[] = ['round', 'mask', 'last'];

/** Whites with a shorter side than this are small, mm (common practice, no source). */
export const smallWhiteMm = 3;

export const isSmallWhite = ({ shortSideMm }: Pick<White, 'shortSideMm'>): boolean =>
  shortSideMm < smallWhiteMm;

/** One connected area of paper kept white. */
export interface White {
  /** A place well inside it, 0..1 from the left and from the top of the raster. */
  readonly at: Point;
  /** Index into `Reading.slots` of that place. */
  readonly slot: number;
  /** On the sheet. */
  readonly areaMm2: number;
  readonly shortSideMm: number;
  /** Share of its outline that is soft or lost, 0..1. */
  readonly softShare: number;
  /** Kept by her brush, wholly or in part. */
  readonly byHand: boolean;
  readonly way: WhiteWay;
  /** Why this way is proposed, a sentence; as proposed also where she chose another way. */
  readonly why: string;
  /** True where she chose the way. */
  readonly decided?: boolean;
}

/** How much of the sheet stays white, in how many areas, how many of them small. */
export const reservesIn = (
  whites: readonly White[],
  slots: readonly Pick<Slot, 'reserve' | 'share'>[],
): ReserveSummary => ({
  share: slots.reduce((sum, slot) => (slot.reserve ? sum + slot.share : sum), 0),
  count: whites.length,
  smallCount: whites.filter(isSmallWhite).length,
});

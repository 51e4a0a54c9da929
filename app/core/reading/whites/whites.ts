import type { Point } from '../../colour/lab.ts';
import { brushPointMm, smallShapeMm } from '../../limits.ts';
import type { CutStroke } from '../../reference/photo-stroke.ts';
import type { ReserveSummary, Slot } from '../slot.ts';

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

export const isSmallWhite = ({ shortSideMm }: Pick<White, 'shortSideMm'>): boolean =>
  shortSideMm < smallShapeMm;

/** Why a way is proposed for a white. */
export type WhiteWhy =
  /** Too small to go round, or in a wet wash; short side on the sheet, mm. */
  | { readonly why: 'tiny' | 'drowns'; readonly mm: number }
  /** The brush goes round it: with its tip, on dry paper, in a wet wash. `soft`: most of its outline is. */
  | { readonly why: 'small' | 'dry' | 'wet'; readonly soft: boolean }
  /** So many alike in a wet wash. */
  | { readonly why: 'tedious'; readonly alike: number };

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
  /**
   * Why this way is proposed; as proposed also where she chose another way. A sentence in readings from before they
   * said codes.
   */
  readonly why: WhiteWhy | string;
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

/** How many whites go each way. */
export function countsByWay(whites: readonly White[]): Readonly<Record<WhiteWay, number>> {
  const count = (way: WhiteWay): number => whites.filter((white) => white.way === way).length;
  return { round: count('round'), mask: count('mask'), last: count('last') };
}

/** Whites under this are tedious to wet round where there are this many of them (own). */
const tedious = { mm: 10, count: 8 } as const;
/** From this share on an outline is mostly soft (own). */
const mostlySoft = 0.5;

/** What a proposal goes by. */
interface WhiteSurroundings {
  /** The first wash round it goes on wet paper. */
  readonly wet: boolean;
  /** Whites with a short side under 10 mm that this wet wash runs round. */
  readonly alike: number;
}

/** How many whites count as tedious together. */
export const isTedious = (shortSideMm: number): boolean =>
  shortSideMm >= brushPointMm && shortSideMm < tedious.mm;

/** The way proposed for a white, and why. Never masked where a brush can go round. */
export function chooseWhiteWay(
  { shortSideMm: mm, softShare }: Pick<White, 'shortSideMm' | 'softShare'>,
  { wet, alike }: WhiteSurroundings,
): { readonly way: WhiteWay; readonly why: WhiteWhy } {
  if (mm < brushPointMm) return { way: 'last', why: { why: 'tiny', mm } };
  const soft = softShare >= mostlySoft;
  if (!wet) return { way: 'round', why: { why: mm < smallShapeMm ? 'small' : 'dry', soft } };
  if (mm < smallShapeMm) return { way: 'mask', why: { why: 'drowns', mm } };
  if (isTedious(mm) && alike >= tedious.count)
    return { way: 'mask', why: { why: 'tedious', alike } };
  return { way: 'round', why: { why: 'wet', soft } };
}

import type { Point } from '../../colour/lab.ts';
import { brushPointMm, smallShapeMm } from '../../limits.ts';
import type { CutStroke } from '../../reference/photo-stroke.ts';
import { openWithCount, sizeInWords } from '../../words/numbers.ts';
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

/** What the ways are called on screen, and the letter that stands for each in the picture. */
export const wayWords: Readonly<Record<WhiteWay, string>> = {
  round: 'Paint round',
  mask: 'Mask',
  last: 'Bring back at the end',
};
export const wayLetters: Readonly<Record<WhiteWay, string>> = { round: 'R', mask: 'M', last: 'E' };

const percentOf = (share: number): string => {
  const tenths = Math.round(1000 * share);
  if (tenths < 1) return 'less than 0.1 %';
  return `${tenths < 100 ? (tenths / 10).toFixed(1) : Math.round(100 * share)} %`;
};

/** '21 mm across, 4.9 % of the sheet, yours'. */
export function whiteInWords(
  { shortSideMm, areaMm2, byHand }: White,
  sheet: { readonly widthMm: number; readonly heightMm: number },
): string {
  const share = percentOf(areaMm2 / (sheet.widthMm * sheet.heightMm));
  return `${sizeInWords(shortSideMm)} across, ${share} of the sheet${byHand ? ', yours' : ''}`;
}

/** How many whites go each way. */
export function countsByWay(whites: readonly White[]): Readonly<Record<WhiteWay, number>> {
  const count = (way: WhiteWay): number => whites.filter((white) => white.way === way).length;
  return { round: count('round'), mask: count('mask'), last: count('last') };
}

/** 'paint round 3, mask 11': only the ways that occur. */
export function countsInWords(whites: readonly White[]): string {
  const counts = countsByWay(whites);
  return whiteWays
    .filter((way) => counts[way] > 0)
    .map((way) => `${wayWords[way].toLowerCase()} ${counts[way]}`)
    .join(', ');
}

/** What stays white, in a sentence; what to do where nothing does. */
export function whitesSentence(whites: readonly White[], share: number): string {
  if (whites.length === 0) {
    return 'No white is left in this picture. With Keep white, brush over what should stay paper.';
  }
  const small = whites.filter(isSmallWhite).length;
  const number = openWithCount(whites.length, 'white');
  const few = small > 0 && small < whites.length ? `, ${small} of them small` : '';
  return `${number}${few}: ${percentOf(share)} of the sheet stays paper.`;
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

/** The way proposed for a white, and why, in one sentence. Never masked where a brush can go round. */
export function chooseWhiteWay(
  { shortSideMm, softShare }: Pick<White, 'shortSideMm' | 'softShare'>,
  { wet, alike }: WhiteSurroundings,
): Pick<White, 'way' | 'why'> {
  const size = sizeInWords(shortSideMm);
  if (shortSideMm < brushPointMm) {
    return {
      way: 'last',
      why: `${size} across: paint over it; opaque white brings it back.`,
    };
  }
  const soft = softShare >= mostlySoft ? ' Soften its edge with a damp brush.' : '';
  if (!wet) {
    return shortSideMm < smallShapeMm
      ? {
          way: 'round',
          why: `Small: paint round it with the tip of the brush and leave it a little too big.${soft}`,
        }
      : {
          way: 'round',
          why: `Paint round it on dry paper, and leave it 1–2 mm bigger than it should be.${soft}`,
        };
  }
  if (shortSideMm < smallShapeMm) {
    return { way: 'mask', why: `${size} across, and the wash round it is wet: it would drown.` };
  }
  if (isTedious(shortSideMm) && alike >= tedious.count) {
    return { way: 'mask', why: `One of ${alike} in a wet wash: too many to wet round each.` };
  }
  return {
    way: 'round',
    why: `Big enough to wet around: keep it dry, 1–2 mm larger than needed.${soft}`,
  };
}

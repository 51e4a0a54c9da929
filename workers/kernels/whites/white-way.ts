import { sizeInWords } from '../../../app/model/white-words.ts';
import { smallWhiteMm, type White } from '../../../app/model/whites.ts';

/** Under this nobody paints round it nor masks it: it comes back at the end, mm (trade practice). */
const sparkleMm = 1;
/** Whites under this are tedious to wet round where there are this many of them (own figures). */
const tedious = { mm: 10, count: 8 } as const;
/** From this share on an outline is mostly soft (own figure). */
const mostlySoft = 0.5;

/** What a proposal goes by. */
export interface WhiteSurroundings {
  /** The first wash round it goes on wet paper. */
  readonly wet: boolean;
  /** Whites with a short side under 10 mm that this wet wash runs round. */
  readonly alike: number;
}

/** How many whites count as tedious together. */
export const isTedious = (shortSideMm: number): boolean =>
  shortSideMm >= sparkleMm && shortSideMm < tedious.mm;

/** The way proposed for a white, and why, in one sentence. Never masked where a brush can go round. */
export function whiteWay(
  { shortSideMm, softShare }: Pick<White, 'shortSideMm' | 'softShare'>,
  { wet, alike }: WhiteSurroundings,
): Pick<White, 'way' | 'why'> {
  const size = sizeInWords(shortSideMm);
  if (shortSideMm < sparkleMm) {
    return {
      way: 'last',
      why: `${size} across: paint over it; opaque white or a scrape brings it back.`,
    };
  }
  const soft = softShare >= mostlySoft ? ' Soften its edge with a damp brush.' : '';
  if (!wet) {
    return shortSideMm < smallWhiteMm
      ? {
          way: 'round',
          why: `Small, but the wash goes on dry paper: leave it out with the point, a little too large.${soft}`,
        }
      : {
          way: 'round',
          why: `The wash goes on dry paper: paint what lies round it, and leave 1 to 2 mm more.${soft}`,
        };
  }
  if (shortSideMm < smallWhiteMm) {
    return { way: 'mask', why: `${size} across, and the wash round it is wet: it would drown.` };
  }
  if (isTedious(shortSideMm) && alike >= tedious.count) {
    return { way: 'mask', why: `One of ${alike} in a wet wash: too many to wet round each.` };
  }
  return {
    way: 'round',
    why: `Large enough to wet round: leave it dry, 1 to 2 mm more than you need.${soft}`,
  };
}

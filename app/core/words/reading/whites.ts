import {
  countsByWay,
  isSmallWhite,
  type White,
  type WhiteWay,
  type WhiteWhy,
  whiteWays,
} from '../../reading/whites/whites.ts';
import { openWithCount, sizeInWords } from '../numbers.ts';

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

/** Why a way is proposed for a white, in a sentence or two; as it was stored where a reading of before has it. */
export function whiteWhyInWords(why: WhiteWhy | string): string {
  if (typeof why === 'string') return why;
  switch (why.why) {
    case 'tiny':
      return `${sizeInWords(why.mm)} across: paint over it; opaque white brings it back.`;
    case 'drowns':
      return `${sizeInWords(why.mm)} across, and the wash round it is wet: it would drown.`;
    case 'tedious':
      return `One of ${why.alike} in a wet wash: too many to wet round each.`;
    default:
      return `${goRound[why.why]}${why.soft ? ' Soften its edge with a damp brush.' : ''}`;
  }
}

const goRound = {
  small: 'Small: paint round it with the tip of the brush and leave it a little too big.',
  dry: 'Paint round it on dry paper, and leave it 1–2 mm bigger than it should be.',
  wet: 'Big enough to wet around: keep it dry, 1–2 mm larger than needed.',
} as const;

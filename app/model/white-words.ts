import { isSmallWhite, type White, type WhiteWay, whiteWays } from './whites.ts';

/** What the ways are called on screen, and the letter that stands for each in the picture. */
export const wayWords: Readonly<Record<WhiteWay, string>> = {
  round: 'Paint round',
  mask: 'Mask',
  last: 'Bring back at the end',
};
export const wayLetters: Readonly<Record<WhiteWay, string>> = { round: 'R', mask: 'M', last: 'E' };

/** A length on the sheet: half millimetres while it is small; 'under half a millimetre' at the least. */
export function sizeInWords(mm: number): string {
  if (mm < 0.5) return 'Under half a millimetre';
  return mm < 10 ? `${Math.round(mm * 2) / 2} mm` : `${Math.round(mm)} mm`;
}

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
    return 'No white is left in this picture. Brush over what is to stay paper with Keep white.';
  }
  const small = whites.filter(isSmallWhite).length;
  const number = whites.length === 1 ? 'One white' : `${whites.length} whites`;
  const few = small > 0 && small < whites.length ? `, ${small} of them small` : '';
  return `${number}${few}: ${percentOf(share)} of the sheet stays paper.`;
}

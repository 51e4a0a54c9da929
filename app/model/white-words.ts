import type { WhiteWay } from './whites.ts';

/** What the ways are called on screen. */
export const wayWords: Readonly<Record<WhiteWay, string>> = {
  round: 'paint round',
  mask: 'mask',
  last: 'bring back at the end',
};

/** A length on the sheet: half millimetres while it is small; 'under half a millimetre' at the least. */
export function sizeInWords(mm: number): string {
  if (mm < 0.5) return 'Under half a millimetre';
  return mm < 10 ? `${Math.round(mm * 2) / 2} mm` : `${Math.round(mm)} mm`;
}

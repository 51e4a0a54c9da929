import type { PaperChoice } from './drying/paper-choice.ts';

/** No one lays more over each other, whatever the paper (R9). */
const mostWashes = 8;

/**
 * Washes over each other a paper bears (R9): wood pulp of 190 g/m2 two, of 300 three; cotton of 300 g/m2 six, of
 * 640 eight and more. Common practice, no source; light cotton and heavy wood pulp are put between (own).
 */
export function washesBorne({ gsm, fibre }: PaperChoice): number {
  if (fibre === 'cellulose') return gsm < 250 ? 2 : gsm < 500 ? 3 : 4;
  return gsm < 250 ? 3 : gsm < 500 ? 6 : mostWashes;
}

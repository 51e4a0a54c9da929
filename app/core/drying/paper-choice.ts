import { mostWashes } from '../limits.ts';

/** What she paints on, as far as it dries: weight in g/m2 and what it is made of. */
export interface PaperChoice {
  readonly gsm: number;
  readonly fibre: 'cellulose' | 'cotton';
}

export const usualPaper: PaperChoice = { gsm: 300, fibre: 'cotton' };

/** Weights the trade sells most, g/m2. */
export const paperWeights = [190, 300, 640] as const;

export const samePaper = (a: PaperChoice, b: PaperChoice): boolean =>
  a.gsm === b.gsm && a.fibre === b.fibre;

/**
 * Washes over each other a paper bears (R9): wood pulp of 190 g/m2 two, of 300 three; cotton of 300 g/m2 six, of
 * 640 eight and more. Common practice, no source; light cotton and heavy wood pulp are put between (own).
 */
export function maxWashes({ gsm, fibre }: PaperChoice): number {
  if (fibre === 'cellulose') return gsm < 250 ? 2 : gsm < 500 ? 3 : 4;
  return gsm < 250 ? 3 : gsm < 500 ? 6 : mostWashes;
}

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

export const paperInWords = ({ gsm, fibre }: PaperChoice): string => `${fibre}, ${gsm} g/m²`;

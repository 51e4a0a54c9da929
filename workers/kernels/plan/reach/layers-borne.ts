import type { PaperChoice } from '../../../../app/model/drying/paper-choice.ts';
import type { Range } from '../../../../app/model/lab.ts';

interface Borne extends PaperChoice {
  readonly layers: Range;
}

/**
 * Washes over each other that a paper bears before its surface suffers. Common practice, no source; cotton of
 * 190 and cellulose of 640 g/m2 are put in between by this project.
 */
const table: readonly Borne[] = [
  { gsm: 190, fibre: 'cellulose', layers: [1, 2] },
  { gsm: 300, fibre: 'cellulose', layers: [2, 3] },
  { gsm: 640, fibre: 'cellulose', layers: [3, 4] },
  { gsm: 190, fibre: 'cotton', layers: [2, 3] },
  { gsm: 300, fibre: 'cotton', layers: [4, 6] },
  { gsm: 640, fibre: 'cotton', layers: [6, 10] },
];

const lightest = 190;

/** For a paper in g/m2: of its fibre, the row of the heaviest paper no heavier than it (the lightest at least). */
export function layersBorne({ gsm, fibre }: PaperChoice): Range {
  const rows = table.filter((row) => row.fibre === fibre && row.gsm <= Math.max(gsm, lightest));
  return rows.at(-1)?.layers ?? [1, 2];
}

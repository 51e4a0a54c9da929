import { colourDifference } from '../../../app/core/colour/ciede2000.ts';
import type { Lab } from '../../../app/core/colour/lab.ts';
import { labOfReflectance, spectrumSize } from '../../../app/core/colour/spectrum.ts';
import { inside, type Surface } from '../../../app/core/colour/surface.ts';
import { layOver, mixSpectra, paintLayer } from '../../../app/core/paint/layer.ts';
import type { TubePaint } from '../../../app/core/paint/paint.ts';
import { paintBox } from '../../../app/core/paint/paint-box.ts';
import acrylic from '../../fixtures/acrylic-namesakes.json';
import measured from '../../fixtures/measured-watercolour-2.json';

// Chen, Huang, Chang, Ouhyoung (2019), arXiv:1904.00275: 520 mixtures of 13 paints. Seven of them have a namesake that
// never saw the set: two rows of the built-in table, four pigments measured as acrylic. The set's cobalt blue is
// ultramarine, its cerulean phthalocyanine, its cadmium red no cadmium (the fixture's `identity`).

/** A paint that stands for another, and how many loads of it are 0.01 ml. */
type Namesake = Pick<TubePaint, 'K' | 'S' | 'strength'>;

const inTable = (id: string): Namesake => {
  const found = paintBox.find((paint) => paint.id === id);
  if (!found || found.provenance === 'measured watercolour') throw new Error(`no namesake ${id}`);
  return found;
};

const asAcrylic = (name: string): Namesake => {
  const found = acrylic.rows.find((row) => row.name === name);
  if (!found) throw new Error(`no acrylic ${name}`);
  return found;
};

/** By the place of the measured paint in the set. */
const ofTable: readonly (readonly [number, Namesake])[] = [
  [0, inTable('pr254-pyrrole-red')],
  [7, inTable('pb153-phthalocyanine-blue')],
];
const allSeven = [
  ...ofTable,
  [2, asAcrylic('burnt sienna')],
  [5, asAcrylic('raw sienna')],
  [8, asAcrylic('ultramarine blue')],
  [9, asAcrylic('ultramarine blue')],
  [11, asAcrylic('bone black')],
] as const;

/**
 * Loads in 0.01 ml of a measured paint: the set states its K and S per 0.01 ml, the first thirteen rows of the
 * built-in table are the same per load.
 */
const loadsIn = (n: number): number => {
  const [inSet, row] = [measured.paints[n], paintBox[n]];
  if (!inSet || row?.provenance !== 'measured watercolour') throw new Error(`no measured row ${n}`);
  const sum = (values: readonly number[]): number => values.reduce((all, one) => all + one, 0);
  return sum(inSet.K) / sum(row.K);
};

/** CIEDE2000 of the mixtures of the set that are asked for, some of its paints replaced. */
function differences(
  replaced: readonly (readonly [number, Namesake])[],
  surface: Surface,
  isAsked: (isReplaced: readonly boolean[]) => boolean,
): number[] {
  const paper = Float64Array.from(measured.paper_R, (seen) => inside(seen, surface));
  const rows = new Map(replaced);
  const paints = measured.paints.map(({ K, S }, n): Namesake => {
    const row = rows.get(n);
    return row ? { K: row.K, S: row.S, strength: loadsIn(n) } : { K, S, strength: 1 };
  });
  return measured.mixtures
    .filter((row) => isAsked(row.slice(0, 2).map((n) => rows.has(n))))
    .map((row) => {
      const amounts = row.slice(2, 4);
      const mix = mixSpectra(
        row.slice(0, 2).map((n) => paints[n] as Namesake),
        amounts,
      );
      const layer = paintLayer(
        mix.K,
        mix.S,
        amounts.reduce((one, two) => one + two),
      );
      const sheet = layOver(layer, paper, new Float64Array(spectrumSize));
      return colourDifference(labOfReflectance(sheet, surface), row.slice(4) as unknown as Lab);
    });
}

/** Of the 130 mixtures both of whose paints have a namesake: both replaced. */
export const namesakeDifferences = (surface: Surface): number[] =>
  differences(allSeven, surface, (isReplaced) => isReplaced.every(Boolean));

/** Of the 130 mixtures of one or both of the two paints that the built-in table has a row for; the other as measured. */
export const tableDifferences = (surface: Surface): number[] =>
  differences(ofTable, surface, (isReplaced) => isReplaced.some(Boolean));

/** Of all 520 with the set's own paints: what no namesake can better. */
export const ownDifferences = (surface: Surface): number[] => differences([], surface, () => true);

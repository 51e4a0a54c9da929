import type { MassCounts, MassWash } from '../../reading/masses.ts';
import { formatCount } from '../numbers.ts';

export const washNames: Readonly<Record<MassWash, string>> = {
  firstWash: 'First wash',
  second: 'Second wash',
  darks: 'Darks',
};

/** The shapes of one wash, each in an outline. */
export const shapesInWords = (count: number): string =>
  count === 0 ? 'No shapes in this wash' : `${formatCount(count, 'shape')}, outlined`;

/** Shapes from which a figure alone frightens (own). */
const manyShapes = 30;

/** How much there is to paint, and why many are no more work. Two values or fewer have no darks of their own. */
export function massesInWords({ firstWash, second, darks }: MassCounts): string {
  if (firstWash === 0) return 'There is no shape to paint: the sheet stays white.';
  const later = [
    ...(second > 0 ? [`${second} in the second`] : []),
    ...(darks > 0 ? [formatCount(darks, 'dark')] : []),
  ];
  const all = `Shapes to paint: ${[`${firstWash} in the first wash`, ...later].join(', ')}.`;
  if (firstWash + second + darks < manyShapes) return all;
  return `${all} One puddle covers many of them at once; a larger smallest shape leaves fewer.`;
}

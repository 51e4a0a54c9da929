import type { MassCounts, MassWash } from './masses.ts';

export const washNames: Readonly<Record<MassWash, string>> = {
  firstWash: 'First wash',
  second: 'Second wash',
  darks: 'Darks',
};

/** The shapes of one wash, each in an outline. */
export const shapesInWords = (count: number): string => {
  if (count === 0) return 'No shapes in this wash';
  return count === 1 ? '1 shape, outlined' : `${count} shapes, outlined`;
};

/** How much there is to paint, in one sentence. Two values or fewer have no darks of their own. */
export function massesInWords({ firstWash, second, darks }: MassCounts): string {
  if (firstWash === 0) return 'There is no shape to paint: the sheet stays white.';
  const later = [
    ...(second > 0 ? [`${second} in the second`] : []),
    ...(darks > 0 ? [darks === 1 ? '1 dark' : `${darks} darks`] : []),
  ];
  return `Shapes to paint: ${[`${firstWash} in the first wash`, ...later].join(', ')}.`;
}

import { isSmallWhite, type White } from '../../model/whites.ts';

/** So many of the largest whites are numbered in the picture and have a row at once. */
export const mostRows = 12;

/** Indices of the whites that have a row of their own: the large ones, and the chosen one. */
export function rowsShown(whites: readonly White[], index: number, all: boolean): number[] {
  const large = [...whites.keys()].filter((i) => !isSmallWhite(whites[i] as White));
  const shown = all ? large : large.slice(0, mostRows);
  if (index >= 0 && index < whites.length && !shown.includes(index)) shown.push(index);
  return shown;
}

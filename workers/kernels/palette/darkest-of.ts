import { isWhiteOrBlack, type Paint } from '../../../app/model/paint.ts';
import { paintBox } from '../optics/paint-box.ts';
import { combinations } from './combinations.ts';
import { mixGroup } from './mix-library.ts';

/** L* of the darkest single wash that mixes of at most two of these paints reach on white paper. */
export function darkestOf(paints: readonly Paint[]): number {
  const sets = [1, 2].flatMap((size) => combinations(paints.length, size));
  return sets.reduce((least, set) => Math.min(least, mixGroup(paints, set).darkest), 100);
}

let ofBox: number | undefined;

/** The same of the built-in box without whites and blacks: what a reading counts on. */
export function darkestOfBox(): number {
  ofBox ??= darkestOf(paintBox.filter((paint) => !isWhiteOrBlack(paint.ci)));
  return ofBox;
}

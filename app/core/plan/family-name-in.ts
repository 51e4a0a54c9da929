import type { Reading } from '../reading/reading.ts';
import type { WashPlan } from './plan.ts';

/**
 * What the colour families are called beside a plan's mixes: by their colours in the photo; with one paint there is
 * only one colour on the sheet, and they are just shapes.
 */
export function familyNameIn(
  { palette }: Pick<WashPlan, 'palette'>,
  { families }: Pick<Reading, 'families'>,
): (family: number) => string {
  if (palette.length === 1) return () => 'shapes';
  const names = new Map(families.map(({ id, name }) => [id, name]));
  return (family) => names.get(family) ?? 'shapes';
}

import type { ColourCells } from './colour-cells.ts';
import { type HueCentre, type HueCentres, hueCentres } from './hue-centres.ts';

export const mostFamilies = 6;
/** Nearer than this in shade-free a* b* two groups are one: noise of a grey picture. Own limit. */
const leastApart = 7;
/** A family more has to take away this much of what is left of the spread. Own limit. */
const worthWhile = 0.28;
/** Colours that stray no further than this from their family's need no family more. */
const closeEnough = 5;

function apart(centres: readonly HueCentre[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [i, [a, b]] of centres.entries()) {
    for (const [x, y] of centres.slice(0, i)) least = Math.min(least, Math.hypot(a - x, b - y));
  }
  return least;
}

/**
 * The centres of the colour families. As many as she wished (1..6) where the picture has them, else
 * as many as gain something; one alone for a grey or single-coloured picture.
 */
export function chooseFamilies(cells: ColourCells, wish?: number): readonly HueCentre[] {
  const found = hueCentres(cells, Math.min(mostFamilies, wish ?? mostFamilies)).filter(
    ({ centres }) => apart(centres) >= leastApart,
  );
  if (wish !== undefined) return (found.at(-1) as HueCentres).centres;
  let chosen = found[0] as HueCentres;
  for (const next of found.slice(1)) {
    if (Math.sqrt(chosen.cost) <= closeEnough) break;
    if (next.cost > chosen.cost * (1 - worthWhile)) break;
    chosen = next;
  }
  return chosen.centres;
}

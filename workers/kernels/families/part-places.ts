import type { ColourCells } from './colour-cells.ts';
import { colourOfPlace, type FamilyPlaces } from './family-places.ts';
import { hueCentres, nearest } from './hue-centres.ts';

/**
 * Nearer than this in shade-free a* b* the two would look the same. Own limit, about the least
 * difference that is noticed (2.3 in CIE L*a*b*, from memory).
 */
const leastApart = 2.5;

/**
 * A family made two by the two centres of its own cells (`hueCentres`: fixed starts); the second
 * takes the number `added`. The same places where the family is one colour.
 */
export function partPlaces(
  places: FamilyPlaces,
  family: number,
  added: number,
  cells: ColourCells,
): FamilyPlaces {
  const centres = hueCentres(cells, 2)[1]?.centres;
  const [first, second] = centres ?? [];
  if (!centres || !first || !second) return places;
  if (Math.hypot(first[0] - second[0], first[1] - second[1]) < leastApart) return places;
  const parted = places.slice();
  for (let place = 0; place < parted.length; place++) {
    if (parted[place] !== family) continue;
    const [a, b] = colourOfPlace(place);
    if (nearest(centres, a, b) === 1) parted[place] = added;
  }
  return parted;
}

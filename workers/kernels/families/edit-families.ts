import type { FamilyColour, FamilyEdit } from '../../../app/model/family-edit.ts';
import type { LabPlanes } from '../pixels/lab-planes.ts';
import { mostFamilies } from './choose-families.ts';
import type { ColourCells } from './colour-cells.ts';
import { type FamilyPlaces, placeOfColour } from './family-places.ts';
import { partPlaces } from './part-places.ts';
import { placeTallies, type SeenFamily, seenFamilies } from './place-tallies.ts';

/** A family further than this (a*, b*) from the colour she saw is not the one she meant. Own limit. */
const knownWithin = 20;

/**
 * The family meant by a colour she saw. She saw means over pixels, so means over pixels are what it
 * is held against, and not the shade-free centres: these differ most for the darks.
 */
export function familyMeant(seen: readonly SeenFamily[], [a, b]: FamilyColour): number | null {
  let meant: number | null = null;
  let least = knownWithin;
  for (const { family, a: ownA, b: ownB } of seen) {
    const distance = Math.hypot(ownA - a, ownB - b);
    if (distance > least) continue;
    least = distance;
    meant = family;
  }
  return meant;
}

function joined(places: FamilyPlaces, one: number, other: number): FamilyPlaces {
  const kept = Math.min(one, other);
  const gone = Math.max(one, other);
  const now = places.slice();
  for (let place = 0; place < now.length; place++) if (now[place] === gone) now[place] = kept;
  return now;
}

const firstUnused = (seen: readonly SeenFamily[]): number =>
  [0, 1, 2, 3, 4, 5].find((number) => seen.every(({ family }) => family !== number)) ?? -1;

/**
 * Her edits of the families, in order, each against the families the ones before it left. An edit
 * rests where it finds nothing to change: both colours by now one family, one colour throughout, six
 * families already, or no family near the colour she saw.
 */
export function editFamilies(
  places: FamilyPlaces,
  planes: LabPlanes,
  cells: ColourCells,
  edits: readonly FamilyEdit[],
): FamilyPlaces {
  if (edits.length === 0) return places;
  const tallies = placeTallies(planes, cells.shadow);
  let now = places;
  for (const edit of edits) {
    const seen = seenFamilies(tallies, now);
    if ('join' in edit && edit.join === 'all') {
      now = now.map(() => 0);
    } else if ('join' in edit) {
      const [one, other] = (edit.join as readonly FamilyColour[]).map((colour) =>
        familyMeant(seen, colour),
      );
      if (one == null || other == null || one === other) continue;
      now = joined(now, one, other);
    } else {
      const meant = familyMeant(seen, edit.part);
      if (meant === null || seen.length >= mostFamilies) continue;
      now = partPlaces(now, meant, firstUnused(seen), cellsOf(cells, now, meant));
    }
  }
  return now;
}

/** The cells of one family. */
function cellsOf(cells: ColourCells, places: FamilyPlaces, family: number): ColourCells {
  const own = [...cells.weight.keys()].filter(
    (i) => places[placeOfColour(cells.a[i] as number, cells.b[i] as number)] === family,
  );
  const picked = (of: Float64Array): Float64Array => Float64Array.from(own, (i) => of[i] as number);
  const weight = picked(cells.weight);
  return {
    count: own.length,
    a: picked(cells.a),
    b: picked(cells.b),
    weight,
    total: weight.reduce((sum, one) => sum + one, 0),
    shadow: cells.shadow,
  };
}

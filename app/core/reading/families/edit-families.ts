import { mostFamilies } from '../../limits.ts';
import type { LabPlanes } from '../../raster/linear-raster.ts';
import { familiesPerBand, greyWeight } from '../shapes/cells.ts';
import {
  colourOfPlace,
  type FamilyPlaces,
  placeFinder,
  placeOfColour,
  placesAtMost,
} from './choose-families.ts';
import type { ColourBins } from './colour-bins.ts';
import type { FamilyColour, FamilyEdit } from './family-edit.ts';
import { type HueCentre, hueCentres, nearestCentre } from './hue-centres.ts';
import { joinBins, pickBins } from './part-families.ts';
import type { PassageFamilies } from './passage-families.ts';

/** A family further than this (a*, b*) from the colour she saw is not the one she meant (own). */
const knownWithin = 20;

/**
 * The family meant by a colour she saw on the screen. It is matched against means over pixels, because
 * these are what the screen shows; the cluster centres differ from them for the darks.
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
  const merged = places.slice();
  for (let place = 0; place < merged.length; place++)
    if (merged[place] === gone) merged[place] = kept;
  return merged;
}

function firstUnused(seen: readonly SeenFamily[], most: number): number {
  for (let number = 0; number < most; number++)
    if (seen.every(({ family }) => family !== number)) return number;
  return -1;
}

/**
 * Her edits of the families, in order, each against the families the ones before it left. An edit
 * rests where it finds nothing to change: both colours by now one family, one colour throughout, `most`
 * families already, or no family near the colour she saw. A family that ground and subject share is one.
 */
export function editFamilies(
  passages: readonly PassageFamilies[],
  planes: LabPlanes,
  edits: readonly FamilyEdit[],
  most = mostFamilies,
): readonly PassageFamilies[] {
  if (edits.length === 0) return passages;
  const tallies = passages.map((passage) => placeTallies(planes, passage));
  let current = passages.map(({ places }) => places);
  for (const edit of edits) {
    const seen = seenFamilies(tallies, current);
    if ('join' in edit && edit.join === 'all') {
      current = current.map((places) => places.map(() => 0));
    } else if ('join' in edit) {
      const [one, other] = (edit.join as readonly FamilyColour[]).map((colour) =>
        familyMeant(seen, colour),
      );
      if (one == null || other == null || one === other) continue;
      current = current.map((places) => joined(places, one, other));
    } else {
      const meant = familyMeant(seen, edit.part);
      if (meant === null || seen.length >= most) continue;
      const centres = twoCentres(passages.map(({ cells }, n) => cellsOf(cells, current[n], meant)));
      const added = firstUnused(seen, most);
      if (centres) current = current.map((places) => partPlaces(places, meant, added, centres));
    }
  }
  return passages.map((passage, n) => ({ ...passage, places: current[n] }));
}

/** The cells of one family. */
function cellsOf(cells: ColourBins, places: FamilyPlaces, family: number): ColourBins {
  const own = [...cells.weight.keys()].filter(
    (i) => places[placeOfColour(cells.a[i], cells.b[i])] === family,
  );
  return pickBins(cells, own);
}

/** Pixels of one place of the shade-free plane: their weight by C*, and the weighted sums of their own a* and b*. */
interface PlaceTally {
  readonly place: number;
  readonly weight: number;
  readonly a: number;
  readonly b: number;
}

/** Every place that has pixels of the passage, in fixed order. */
function placeTallies(
  { lightness, a, b }: LabPlanes,
  { cells, where }: PassageFamilies,
): readonly PlaceTally[] {
  const weights = new Float64Array(placesAtMost);
  const sumsA = new Float64Array(placesAtMost);
  const sumsB = new Float64Array(placesAtMost);
  const placeOf = placeFinder(cells.shadow);
  for (let i = 0; i < lightness.length; i++) {
    if (where !== null && where.map[i] !== where.value) continue;
    const place = placeOf(lightness[i], a[i], b[i]);
    const [own, other] = [a[i], b[i]];
    const weight = greyWeight + Math.sqrt(own * own + other * other);
    weights[place] += weight;
    sumsA[place] += weight * own;
    sumsB[place] += weight * other;
  }
  const tallies: PlaceTally[] = [];
  for (const [place, weight] of weights.entries()) {
    if (weight === 0) continue;
    tallies.push({ place, weight, a: sumsA[place], b: sumsB[place] });
  }
  return tallies;
}

/** A family's a* and b* over its pixels, as a reading gives them. */
export interface SeenFamily {
  readonly family: number;
  readonly a: number;
  readonly b: number;
}

/** The families that have pixels, by number, in the colours she sees them in; of every passage its tallies and places. */
function seenFamilies(
  tallies: readonly (readonly PlaceTally[])[],
  current: readonly FamilyPlaces[],
): readonly SeenFamily[] {
  const sums = Array.from({ length: familiesPerBand }, () => ({ weight: 0, a: 0, b: 0 }));
  for (const [n, places] of current.entries()) {
    for (const { place, weight, a, b } of tallies[n]) {
      const sum = sums[places[place]];
      sum.weight += weight;
      sum.a += a;
      sum.b += b;
    }
  }
  return sums.flatMap(({ weight, a, b }, family) =>
    weight > 0 ? [{ family, a: a / weight, b: b / weight }] : [],
  );
}

/**
 * Nearer than this in shade-free a* b* the two would look the same. Own limit, about the least
 * difference that is noticed (2.3 in CIE L*a*b*, from memory).
 */
const leastApart = 2.5;

/** The two centres of a family's cells in all passages (`hueCentres`: fixed starts); null where it is one colour. */
function twoCentres(passages: readonly ColourBins[]): readonly HueCentre[] | null {
  const centres = hueCentres(joinBins(passages), 2)[1]?.centres;
  const [first, second] = centres ?? [];
  if (!centres || !first || !second) return null;
  return Math.hypot(first[0] - second[0], first[1] - second[1]) < leastApart ? null : centres;
}

/** A family made two by two centres; what is nearer to the second takes the number `added`. */
function partPlaces(
  places: FamilyPlaces,
  family: number,
  added: number,
  centres: readonly HueCentre[],
): FamilyPlaces {
  const parted = places.slice();
  for (let place = 0; place < parted.length; place++) {
    if (parted[place] !== family) continue;
    const [a, b] = colourOfPlace(place);
    if (nearestCentre(centres, a, b) === 1) parted[place] = added;
  }
  return parted;
}

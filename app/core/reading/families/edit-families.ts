import { mostFamilies } from '../../limits.ts';
import type { LabPlanes } from '../../raster/linear-raster.ts';
import { greyWeight } from '../shapes/cells.ts';
import {
  colourOfPlace,
  type FamilyPlaces,
  placeFinder,
  placeOfColour,
  placesAtMost,
} from './choose-families.ts';
import type { ColourBins } from './colour-bins.ts';
import type { FamilyColour, FamilyEdit } from './family-edit.ts';
import { hueCentres, nearestCentre } from './hue-centres.ts';
import { pickBins } from './part-families.ts';

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
  cells: ColourBins,
  edits: readonly FamilyEdit[],
): FamilyPlaces {
  if (edits.length === 0) return places;
  const tallies = placeTallies(planes, cells.shadow);
  let current = places;
  for (const edit of edits) {
    const seen = seenFamilies(tallies, current);
    if ('join' in edit && edit.join === 'all') {
      current = current.map(() => 0);
    } else if ('join' in edit) {
      const [one, other] = (edit.join as readonly FamilyColour[]).map((colour) =>
        familyMeant(seen, colour),
      );
      if (one == null || other == null || one === other) continue;
      current = joined(current, one, other);
    } else {
      const meant = familyMeant(seen, edit.part);
      if (meant === null || seen.length >= mostFamilies) continue;
      current = partPlaces(current, meant, firstUnused(seen), cellsOf(cells, current, meant));
    }
  }
  return current;
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

/** Every place that has pixels, in fixed order. `shadow` as in `ColourCells`. */
function placeTallies(
  { lightness, a, b }: LabPlanes,
  shadow: readonly [a: number, b: number],
): readonly PlaceTally[] {
  const weights = new Float64Array(placesAtMost);
  const sumsA = new Float64Array(placesAtMost);
  const sumsB = new Float64Array(placesAtMost);
  const placeOf = placeFinder(shadow);
  for (let i = 0; i < lightness.length; i++) {
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

/** The families that have pixels, by number, in the colours she sees them in. */
function seenFamilies(tallies: readonly PlaceTally[], places: FamilyPlaces): readonly SeenFamily[] {
  const sums = Array.from({ length: 8 }, () => ({ weight: 0, a: 0, b: 0 }));
  for (const { place, weight, a, b } of tallies) {
    const sum = sums[places[place]];
    if (!sum) continue;
    sum.weight += weight;
    sum.a += a;
    sum.b += b;
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

/**
 * A family made two by the two centres of its own cells (`hueCentres`: fixed starts); the second
 * takes the number `added`. The same places where the family is one colour.
 */
function partPlaces(
  places: FamilyPlaces,
  family: number,
  added: number,
  cells: ColourBins,
): FamilyPlaces {
  const centres = hueCentres(cells, 2)[1]?.centres;
  const [first, second] = centres ?? [];
  if (!centres || !first || !second) return places;
  if (Math.hypot(first[0] - second[0], first[1] - second[1]) < leastApart) return places;
  const parted = places.slice();
  for (let place = 0; place < parted.length; place++) {
    if (parted[place] !== family) continue;
    const [a, b] = colourOfPlace(place);
    if (nearestCentre(centres, a, b) === 1) parted[place] = added;
  }
  return parted;
}

import { mostFamilies } from '../../limits.ts';
import type { LabPlanes } from '../../raster/linear-raster.ts';
import { type ColourBins, colourTrust, shadeFree } from './colour-bins.ts';
import { type HueCentre, type HueCentres, hueCentres, nearestCentre } from './hue-centres.ts';
import { partFamilies } from './part-families.ts';

/** Nearer than this in shade-free a* b* two groups are one: noise of a grey picture (own). */
export const leastApart = 7;
/** A family more has to take away this much of what is left of the spread (own). */
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
export function chooseFamilies(
  cells: ColourBins,
  wish?: number,
  most = mostFamilies,
): readonly HueCentre[] {
  const found = hueCentres(cells, Math.min(most, wish ?? most)).filter(
    ({ centres }) => apart(centres) >= leastApart,
  );
  if (wish !== undefined) return (found.at(-1) as HueCentres).centres;
  let chosen = found[0];
  for (const next of found.slice(1)) {
    if (Math.sqrt(chosen.cost) <= closeEnough) break;
    if (next.cost > chosen.cost * (1 - worthWhile)) break;
    chosen = next;
  }
  return partFamilies(cells, chosen.centres, most);
}

// Read once, for the loops: some ways to load a file look imports up each time.
const [closest, trusted, toMiddle] = [nearestCentre, colourTrust, shadeFree];

/** Half-unit places of the shade-free plane; colours beyond are held at its border. */
const perUnit = 2;
const half = 128 * perUnit;
const side = 2 * half;

export const placesAtMost = side * side;

/** The family, 0..7, of every place of the shade-free plane: a pixel costs one look. */
export type FamilyPlaces = Uint8Array;

/** The family of every place by its nearest centre. */
export function familyPlaces(centres: readonly HueCentre[]): FamilyPlaces {
  const places = new Uint8Array(placesAtMost);
  if (centres.length < 2) return places;
  for (let v = 0, place = 0; v < side; v++) {
    for (let u = 0; u < side; u++, place++) {
      places[place] = closest(centres, middleOf(u), middleOf(v));
    }
  }
  return places;
}

const middleOf = (step: number): number => (step - half + 0.5) / perUnit;

/** Shade-free a* and b* in the middle of a place. */
export const colourOfPlace = (place: number): readonly [a: number, b: number] => [
  middleOf(place % side),
  middleOf(Math.floor(place / side)),
];

/** Place of a shade-free colour. */
export function placeOfColour(a: number, b: number): number {
  const u = Math.floor(a * perUnit) + half;
  const v = Math.floor(b * perUnit) + half;
  return held(v) * side + held(u);
}

const held = (step: number): number => (step < 0 ? 0 : step >= side ? side - 1 : step);

/**
 * Place of a pixel's colour. Where a shadow's own colour can't be trusted, the colour of the less
 * dark shadows stands in, so that noise never speckles the darks.
 */
export function placeFinder(
  shadow: readonly [a: number, b: number],
): (lightness: number, a: number, b: number) => number {
  const [shadowA, shadowB] = shadow;
  return (lightness, a, b) => placeOf(lightness, a, b, shadowA, shadowB);
}

/** The same for loops over pixels: a function made anew is called with numbers that are made anew. */
function placeOf(
  lightness: number,
  a: number,
  b: number,
  shadowA: number,
  shadowB: number,
): number {
  const trust = trusted(lightness);
  const scale = trust * toMiddle(lightness) * perUnit;
  const rest = (1 - trust) * perUnit;
  // Cut off instead of rounded down: quicker, and the same but outside the plane, where it is held.
  const u = (scale * a + rest * shadowA + half) | 0;
  const v = (scale * b + rest * shadowB + half) | 0;
  return held(v) * side + held(u);
}

/** The family of every pixel, each passage by its own. */
export function familyMap(
  { lightness, a, b }: LabPlanes,
  passages: readonly {
    readonly places: FamilyPlaces;
    readonly cells: Pick<ColourBins, 'shadow'>;
    readonly where: { readonly map: Uint8Array; readonly value: number } | null;
  }[],
  map = new Uint8Array(lightness.length),
): Uint8Array {
  map.fill(0);
  for (const { places, cells, where } of passages) {
    if (places.every((family) => family === 0)) continue;
    const [shadowA, shadowB] = cells.shadow;
    for (let i = 0; i < map.length; i++) {
      if (where !== null && where.map[i] !== where.value) continue;
      map[i] = places[placeOf(lightness[i], a[i], b[i], shadowA, shadowB)];
    }
  }
  return map;
}

import { type HueCentre, nearest } from './hue-centres.ts';
import { colourTrust, shadeFree } from './shade-free.ts';

// Read once, for the loops: some ways to load a file look imports up each time.
const [closest, trusted, toMiddle] = [nearest, colourTrust, shadeFree];

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
  for (let v = 0, at = 0; v < side; v++) {
    for (let u = 0; u < side; u++, at++) {
      places[at] = closest(centres, middleOf(u), middleOf(v));
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
  return (lightness, a, b) => {
    const trust = trusted(lightness);
    const scale = trust * toMiddle(lightness) * perUnit;
    const rest = (1 - trust) * perUnit;
    const u = Math.floor(scale * a + rest * shadowA) + half;
    const v = Math.floor(scale * b + rest * shadowB) + half;
    return held(v) * side + held(u);
  };
}

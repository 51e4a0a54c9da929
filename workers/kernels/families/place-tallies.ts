import type { LabPlanes } from '../pixels/lab-planes.ts';
import { type FamilyPlaces, placeFinder, placesAtMost } from './family-places.ts';

/** Pixels of one place of the shade-free plane: how many, and the sums of their own a* and b*. */
export interface PlaceTally {
  readonly place: number;
  readonly pixels: number;
  readonly a: number;
  readonly b: number;
}

/** Every place that has pixels, in fixed order. `shadow` as in `ColourCells`. */
export function placeTallies(
  { lightness, a, b }: LabPlanes,
  shadow: readonly [a: number, b: number],
): readonly PlaceTally[] {
  const pixels = new Uint32Array(placesAtMost);
  const sumsA = new Float64Array(placesAtMost);
  const sumsB = new Float64Array(placesAtMost);
  const placeOf = placeFinder(shadow);
  for (let i = 0; i < lightness.length; i++) {
    const place = placeOf(lightness[i] as number, a[i] as number, b[i] as number);
    pixels[place] = (pixels[place] as number) + 1;
    sumsA[place] = (sumsA[place] as number) + (a[i] as number);
    sumsB[place] = (sumsB[place] as number) + (b[i] as number);
  }
  const tallies: PlaceTally[] = [];
  for (const [place, count] of pixels.entries()) {
    if (count === 0) continue;
    const sums = { a: sumsA[place] as number, b: sumsB[place] as number };
    tallies.push({ place, pixels: count, ...sums });
  }
  return tallies;
}

/** A family's mean a* and b* over its pixels, as a reading gives them. */
export interface SeenFamily {
  readonly family: number;
  readonly a: number;
  readonly b: number;
}

/** The families that have pixels, by number, in the colours she sees them in. */
export function seenFamilies(
  tallies: readonly PlaceTally[],
  places: FamilyPlaces,
): readonly SeenFamily[] {
  const sums = Array.from({ length: 8 }, () => ({ pixels: 0, a: 0, b: 0 }));
  for (const { place, pixels, a, b } of tallies) {
    const sum = sums[places[place] as number];
    if (!sum) continue;
    sum.pixels += pixels;
    sum.a += a;
    sum.b += b;
  }
  return sums.flatMap(({ pixels, a, b }, family) =>
    pixels > 0 ? [{ family, a: a / pixels, b: b / pixels }] : [],
  );
}

import type { LabPlanes } from '../pixels/lab-planes.ts';
import type { ColourCells } from './colour-cells.ts';
import { type FamilyPlaces, placeFinder } from './family-places.ts';

/** The family of every pixel. */
export function familyMap(
  { lightness, a, b }: LabPlanes,
  places: FamilyPlaces,
  { shadow }: Pick<ColourCells, 'shadow'>,
): Uint8Array {
  const map = new Uint8Array(lightness.length);
  if (places.every((family) => family === 0)) return map;
  const placeOf = placeFinder(shadow);
  for (let i = 0; i < map.length; i++) {
    map[i] = places[placeOf(lightness[i] as number, a[i] as number, b[i] as number)] as number;
  }
  return map;
}

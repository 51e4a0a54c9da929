import type { LabPlanes } from '../pixels/lab-planes.ts';
import type { ColourCells } from './colour-cells.ts';
import { type HueCentre, nearest } from './hue-centres.ts';
import { colourTrust, shadeFree } from './shade-free.ts';

/** Half-unit places of the shade-free plane; colours beyond are held at its border. */
const perUnit = 2;
const half = 128 * perUnit;
const side = 2 * half;

/** Nearest centre of every place, so that a pixel costs one look. */
function placesOf(centres: readonly HueCentre[]): Uint8Array {
  const places = new Uint8Array(side * side);
  for (let v = 0, at = 0; v < side; v++) {
    for (let u = 0; u < side; u++, at++) {
      places[at] = nearest(centres, (u - half + 0.5) / perUnit, (v - half + 0.5) / perUnit)[1];
    }
  }
  return places;
}

/**
 * The family, 0 .. centres - 1, of every pixel. Where a shadow's own colour can't be trusted, the
 * colour of the less dark shadows stands in, so that noise never speckles the darks.
 */
export function familyMap(
  planes: LabPlanes,
  centres: readonly HueCentre[],
  { shadow }: Pick<ColourCells, 'shadow'>,
): Uint8Array {
  const { lightness, a, b } = planes;
  const map = new Uint8Array(lightness.length);
  if (centres.length < 2) return map;
  const places = placesOf(centres);
  const [shadowA, shadowB] = shadow;
  for (let i = 0; i < map.length; i++) {
    const l = lightness[i] as number;
    const trust = colourTrust(l);
    const scale = trust * shadeFree(l) * perUnit;
    const rest = (1 - trust) * perUnit;
    let u = Math.floor(scale * (a[i] as number) + rest * shadowA) + half;
    let v = Math.floor(scale * (b[i] as number) + rest * shadowB) + half;
    u = u < 0 ? 0 : u >= side ? side - 1 : u;
    v = v < 0 ? 0 : v >= side ? side - 1 : v;
    map[i] = places[v * side + u] as number;
  }
  return map;
}

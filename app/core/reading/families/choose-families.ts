import { mostFamilies } from '../../limits.ts';
import type { LabPlanes } from '../../raster/linear-raster.ts';
import { type ColourBins, colourTrust, shadeFree } from './colour-bins.ts';

/** Nearer than this in shade-free a* b* two groups are one: noise of a grey picture (own). */
const leastApart = 7;
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
export function chooseFamilies(cells: ColourBins, wish?: number): readonly HueCentre[] {
  const found = hueCentres(cells, Math.min(mostFamilies, wish ?? mostFamilies)).filter(
    ({ centres }) => apart(centres) >= leastApart,
  );
  if (wish !== undefined) return (found.at(-1) as HueCentres).centres;
  let chosen = found[0];
  for (const next of found.slice(1)) {
    if (Math.sqrt(chosen.cost) <= closeEnough) break;
    if (next.cost > chosen.cost * (1 - worthWhile)) break;
    chosen = next;
  }
  return chosen.centres;
}

// Weighted k-means over the colour cells (Lloyd, 'Least squares quantization in PCM', 1982). Every
// start is fixed: the mean, then each time the cell whose weight times squared distance to the
// centres so far is largest. Means are taken in a*, b*, never of hue angles, so nothing breaks at 0.
type HueCentre = readonly [a: number, b: number];

interface HueCentres {
  readonly centres: readonly HueCentre[];
  /** Mean squared distance of the colours to their centre. */
  readonly cost: number;
}

const rounds = 40;

const squaredTo = (centre: HueCentre, a: number, b: number): number =>
  (a - centre[0]) * (a - centre[0]) + (b - centre[1]) * (b - centre[1]);

/** Which of the centres is nearest; the first of several. */
export function nearestCentre(centres: readonly HueCentre[], a: number, b: number): number {
  let best = Number.POSITIVE_INFINITY;
  let which = 0;
  for (let k = 0; k < centres.length; k++) {
    const distance = squaredTo(centres[k], a, b);
    if (distance >= best) continue;
    best = distance;
    which = k;
  }
  return which;
}

/** One round: every cell to its nearest centre, every centre to the mean of its cells. */
function moved(cells: ColourBins, centres: readonly HueCentre[]): HueCentres {
  const sums = centres.map(() => [0, 0, 0] as [number, number, number]);
  let cost = 0;
  for (let i = 0; i < cells.count; i++) {
    const a = cells.a[i];
    const b = cells.b[i];
    const weight = cells.weight[i];
    const which = nearestCentre(centres, a, b);
    cost += weight * squaredTo(centres[which], a, b);
    const sum = sums[which];
    sum[0] += weight * a;
    sum[1] += weight * b;
    sum[2] += weight;
  }
  const next = sums.map(
    ([a, b, weight], k): HueCentre => (weight > 0 ? [a / weight, b / weight] : centres[k]),
  );
  return { centres: next, cost: cells.total > 0 ? cost / cells.total : 0 };
}

function settled(cells: ColourBins, start: readonly HueCentre[]): HueCentres {
  let found = moved(cells, start);
  for (let i = 0; i < rounds; i++) {
    const next = moved(cells, found.centres);
    const still = next.centres.every(
      ([a, b], k) => Math.abs(a - found.centres[k][0]) + Math.abs(b - found.centres[k][1]) < 1e-6,
    );
    found = next;
    if (still) break;
  }
  return found;
}

/** The colour that lies worst with the centres so far. */
function worst(cells: ColourBins, centres: readonly HueCentre[]): HueCentre {
  let best = -1;
  let farthest = 0;
  for (let i = 0; i < cells.count; i++) {
    const a = cells.a[i];
    const b = cells.b[i];
    const own = centres[nearestCentre(centres, a, b)];
    const gain = cells.weight[i] * squaredTo(own, a, b);
    if (gain <= best) continue;
    best = gain;
    farthest = i;
  }
  return [cells.a[farthest], cells.b[farthest]];
}

/** The centres for 1, 2 ... `most` groups, in that order; one at [0, 0] where no colour is to be seen. */
export function hueCentres(cells: ColourBins, most: number): HueCentres[] {
  const found: HueCentres[] = [];
  let start: readonly HueCentre[] = [[0, 0]];
  for (let k = 1; k <= most; k++) {
    const clusters = settled(cells, start);
    found.push(clusters);
    if (cells.count <= k) break;
    start = [...clusters.centres, worst(cells, clusters.centres)];
  }
  return found;
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
  return (lightness, a, b) => {
    const trust = trusted(lightness);
    const scale = trust * toMiddle(lightness) * perUnit;
    const rest = (1 - trust) * perUnit;
    const u = Math.floor(scale * a + rest * shadowA) + half;
    const v = Math.floor(scale * b + rest * shadowB) + half;
    return held(v) * side + held(u);
  };
}

/** The family of every pixel. */
export function familyMap(
  { lightness, a, b }: LabPlanes,
  places: FamilyPlaces,
  { shadow }: Pick<ColourBins, 'shadow'>,
): Uint8Array {
  const map = new Uint8Array(lightness.length);
  if (places.every((family) => family === 0)) return map;
  const placeOf = placeFinder(shadow);
  for (let i = 0; i < map.length; i++) {
    map[i] = places[placeOf(lightness[i], a[i], b[i])];
  }
  return map;
}

import type { Point } from '../colour/lab.ts';
import type { LinearRaster } from '../raster/linear-raster.ts';
import type { PixelSize } from '../raster/size.ts';
import { type Corners, cornersOf, homographyOf, project } from './homography.ts';
import { offBoard } from './off-board.ts';
import { outerQuad } from './outer-quad.ts';

/** The same corners begun at each of the four: the photo may be turned. */
const turnedWays = ([a, b, c, d]: Corners): readonly Corners[] => [
  [a, b, c, d],
  [b, c, d, a],
  [c, d, a, b],
  [d, a, b, c],
];

/** So many places are aligned (own). */
const mostAligned = 5;

/** Sizes, turns in radians and steps over the photo at which it is then tried, as shares of the photo (own). */
const anySizes = [0.5, 0.57, 0.65, 0.74, 0.84] as const;
const anyTurns = [-0.09, 0, 0.09] as const;
const anyStep = 0.06;
const anyReach = 0.18;

/** Upright places all over the photo: nothing but the picture will tell them apart. */
export function placesAnywhere(photo: PixelSize, { width, height }: PixelSize): Corners[] {
  const long = Math.max(photo.width, photo.height);
  const places: Corners[] = [];
  for (const size of anySizes)
    for (const turn of anyTurns)
      for (let dx = -anyReach; dx <= anyReach; dx += anyStep)
        for (let dy = -anyReach; dy <= anyReach; dy += anyStep) {
          const scale = (size * long) / Math.max(width, height);
          const [cos, sin] = [scale * Math.cos(turn), scale * Math.sin(turn)];
          const place = ([x, y]: Point): Point => {
            const [u, v] = [x - width / 2, y - height / 2];
            return [
              photo.width / 2 + dx * long + cos * u - sin * v,
              photo.height / 2 + dy * long + sin * u + cos * v,
            ];
          };
          const [a, b, c, d] = cornersOf(width, height).map(place);
          places.push([a, b, c, d]);
        }
  return places;
}

/** Her border may be so wide, shares of the sheet's long side (own): the painting lies within what is off the board. */
const borders = [0, 0.014, 0.026, 0.037] as const;

/** Places within what is not the board, px of `small`; `sheet` gives the painting's shape. None where nothing is. */
export function placesOffBoard(small: LinearRaster, { width, height }: PixelSize): Corners[] {
  const outer = outerQuad(offBoard(small), small);
  if (!outer) return [];
  return borders.flatMap((share): Corners[] => {
    const margin = share * Math.max(width, height);
    const around = cornersOf(width + 2 * margin, height + 2 * margin);
    const turned = isAcross(outer) === width >= height ? outer : turnedWays(outer)[1];
    const h = homographyOf(around, turned);
    if (!h) return [];
    const [a, b, c, d] = cornersOf(width, height).map(([x, y]) =>
      project(h, x + margin, y + margin),
    );
    return [[a, b, c, d]];
  });
}

const isAcross = ([a, b, c, d]: Corners): boolean =>
  Math.hypot(b[0] - a[0], b[1] - a[1]) + Math.hypot(d[0] - c[0], d[1] - c[1]) >=
  Math.hypot(c[0] - b[0], c[1] - b[1]) + Math.hypot(a[0] - d[0], a[1] - d[1]);

/** So many places are looked at between two pauses: some 10 ms. */
const placesAtOnce = 40;

/** The places, each the way round that is likeliest, that look most like the sheet. */
export async function likeliest(
  places: readonly Corners[],
  likeness: (h: Float64Array) => number,
  { width, height }: PixelSize,
  pause: () => Promise<void>,
): Promise<Corners[]> {
  const tried: { readonly corners: Corners; readonly like: number }[] = [];
  for (const [n, place] of places.entries()) {
    if (n % placesAtOnce === placesAtOnce - 1) await pause();
    for (const corners of turnedWays(place)) {
      const h = homographyOf(cornersOf(width, height), corners);
      if (h) tried.push({ corners, like: likeness(h) });
    }
  }
  return tried
    .sort((one, two) => two.like - one.like)
    .slice(0, mostAligned)
    .map(({ corners }) => corners);
}

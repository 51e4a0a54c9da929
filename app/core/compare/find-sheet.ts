import type { Point } from '../colour/lab.ts';
import type { Checkpoint } from '../palette/checkpoint.ts';
import { emptyRaster, type LinearRaster } from '../raster/linear-raster.ts';
import { type PixelSize, rasterSize } from '../raster/size.ts';
import {
  type Alignment,
  type AlignmentTarget,
  align,
  alignmentTarget,
  likenessOf,
} from './align.ts';
import { findQuads, type Quad } from './find-quads.ts';
import { type Corners, cornersOf, homographyOf, project, scaledCorners } from './homography.ts';
import { type LightPyramid, lightPyramid } from './light-pyramid.ts';
import { localShifts } from './local-shifts.ts';
import { offBoard } from './off-board.ts';

/** How sure it is that the sheet lies where it is said to lie. */
export type Sureness = 'sure' | 'fairly sure' | 'not sure';

/** Where the sheet lies in a photo. */
export interface SheetPlace {
  /** Shares of the photo's sides, clockwise from the sheet's own upper left corner. */
  readonly corners: Corners;
  readonly sureness: Sureness;
  /** Correlation with the expected sheet, -1..1. */
  readonly likeness: number;
  /** How far a corner may be off, as a share of the sheet's long side: a deviation. */
  readonly doubt: number;
}

/** Long sides of the rasters that are looked at, px: the photo for lines, the sheet for a first look and then finer. */
const linesPx = 400;
const glancePx = 64;
const finerPx = [80, 160, 360] as const;
const roundsAt = [12, 8, 5] as const;
/** What counts as slow at the glance and at each fineness, as shares of the long side: later, edges alone count (own). */
const slowShares = [0.08, 0.07, 0.05, 0.03] as const;

/** So many quadrangles of each kind are tried, and so many of them aligned (own). */
const mostQuads = 14;
const mostAligned = 5;

/** A raster averaged to a smaller long side; itself where it is no larger. */
export function reducedRaster(raster: LinearRaster, longSidePx: number): LinearRaster {
  const size = rasterSize(raster.width, raster.height, longSidePx);
  const out = emptyRaster(size.width, size.height);
  const { width, height } = raster;
  for (const [from, to] of [
    [raster.red, out.red],
    [raster.green, out.green],
    [raster.blue, out.blue],
  ])
    for (let y = 0; y < size.height; y++) {
      const [top, bottom] = [
        Math.floor((y * height) / size.height),
        Math.max(1, Math.floor(((y + 1) * height) / size.height)),
      ];
      for (let x = 0; x < size.width; x++) {
        const [left, right] = [
          Math.floor((x * width) / size.width),
          Math.floor(((x + 1) * width) / size.width),
        ];
        let sum = 0;
        for (let v = top; v < bottom; v++)
          for (let i = v * width + left; i < v * width + right; i++) sum += from[i];
        to[y * size.width + x] = sum / ((bottom - top) * (right - left));
      }
    }
  return out;
}

/** The same corners begun at each of the four: the photo may be turned. */
const turnedWays = ([a, b, c, d]: Corners): readonly Corners[] => [
  [a, b, c, d],
  [b, c, d, a],
  [c, d, a, b],
  [d, a, b, c],
];

/** Likeness from which an alignment is sure, or fairly so (own). */
const sureFrom = 0.8;
const fairlyFrom = 0.62;

/** No alignment is truer than this share of the long side: paper bends, lenses too (own). */
const leastDoubt = 0.001;

/** So many parts of the sheet may lie elsewhere than they should, 0..1, where it is sure, or fairly so (own). */
const mostAstray = { sure: 0.15, fairly: 0.3 } as const;

function surenessOf(likeness: number, doubt: number, astray: number): Sureness {
  if (likeness >= sureFrom && doubt < 0.004 && astray <= mostAstray.sure) return 'sure';
  const isFair = likeness >= fairlyFrom && doubt < 0.008 && astray <= mostAstray.fairly;
  return isFair ? 'fairly sure' : 'not sure';
}

/** The expected sheet at all finenesses. */
const targetsOf = (expected: LinearRaster) =>
  [glancePx, ...finerPx].map((px, n) =>
    alignmentTarget(reducedRaster(expected, px), slowShares[n]),
  );

const onPhoto = (
  { toPhoto }: Pick<Alignment, 'toPhoto'>,
  { width, height }: PixelSize,
): Corners => {
  const [a, b, c, d] = cornersOf(width, height).map(([x, y]) => project(toPhoto, x, y));
  return [a, b, c, d];
};

/**
 * Where the expected sheet lies in a photo: by the straight lines in it and by what is not the board, each place tried
 * and turned, the likeliest aligned by the picture itself. With corners of hers these are taken for the start. Null
 * where nothing looks like a sheet. Lets messages in between its parts.
 */
export async function findSheet(
  photo: LinearRaster,
  expected: LinearRaster,
  checkpoint: Checkpoint,
  given?: Corners,
): Promise<SheetPlace | null> {
  const [glance, ...finer] = targetsOf(expected);
  await checkpoint(0.1);
  const planes = lightPyramid(photo);
  await checkpoint(0.15);
  const alignedAt = (level: number, from: Corners): Alignment | null => {
    const target = finer[level];
    const h = homographyOf(cornersOf(target.size.width, target.size.height), from);
    return h && align(planes, h, target, roundsAt[level]);
  };
  const coarsely = async (starts: readonly Corners[], part: number) => {
    let best: { readonly found: Alignment; readonly corners: Corners } | null = null;
    for (const corners of starts) {
      const found = alignedAt(0, corners);
      if (found && found.likeness > (best?.found.likeness ?? Number.NEGATIVE_INFINITY))
        best = { found, corners: onPhoto(found, finer[0].size) };
      await checkpoint(part);
    }
    return best;
  };
  const likeness = (h: Float64Array): number => likenessOf(planes, h, glance);
  const likeliestOf = (places: readonly Corners[], part: number) =>
    likeliest(places, likeness, glance.size, () => checkpoint(part));
  const lookedFor = given
    ? [scaledCorners(given, photo.width, photo.height)]
    : await likeliestOf(await candidates(photo, () => checkpoint(0.25)), 0.35);
  let first = await coarsely(lookedFor, 0.45);
  if (!given && (first?.found.likeness ?? 0) < goodFrom) {
    const places = await likeliestOf(placesAnywhere(photo, glance.size), 0.55);
    const anywhere = await coarsely(places, 0.65);
    if (anywhere && anywhere.found.likeness > (first?.found.likeness ?? 0)) first = anywhere;
  }
  if (!first) return null;
  const place = await refined(planes, first.corners, finer, alignedAt, () => checkpoint(0.8));
  return { ...place, corners: scaledCorners(place.corners, 1 / photo.width, 1 / photo.height) };
}

/** Finer and finer; where parts of the sheet then lie elsewhere together, once more from there. */
async function refined(
  planes: LightPyramid,
  start: Corners,
  finer: readonly AlignmentTarget[],
  alignedAt: (level: number, from: Corners) => Alignment | null,
  pause: () => Promise<void>,
): Promise<SheetPlace> {
  let corners = start;
  let found: Alignment | null = null;
  const climb = async (): Promise<void> => {
    for (let level = 1; level < finer.length; level++) {
      const next = alignedAt(level, corners);
      await pause();
      if (!next) return;
      found = next;
      corners = onPhoto(next, finer[level].size);
    }
  };
  const lookAt = finer[1];
  const shifts = () => {
    const h = homographyOf(cornersOf(lookAt.size.width, lookAt.size.height), corners);
    return h ? localShifts(planes, h, lookAt) : { astray: 1, mended: null };
  };
  await climb();
  let local = shifts();
  await pause();
  if (local.astray > 0 && local.mended) {
    const before = { corners, found, local };
    corners = onPhoto({ toPhoto: local.mended }, lookAt.size);
    await climb();
    local = shifts();
    if (local.astray > before.local.astray) ({ corners, found, local } = before);
  }
  const { likeness, doubt } = (found as Alignment | null) ?? { likeness: 0, doubt: 1 };
  const whole = Math.hypot(doubt, leastDoubt);
  return { corners, sureness: surenessOf(likeness, whole, local.astray), likeness, doubt: whole };
}

/** Under this likeness the sheet is sought anywhere, and not only where lines and board show one (own). */
const goodFrom = 0.7;
/** Sizes, turns in radians and steps over the photo at which it is then tried, as shares of the photo (own). */
const anySizes = [0.5, 0.57, 0.65, 0.74, 0.84] as const;
const anyTurns = [-0.09, 0, 0.09] as const;
const anyStep = 0.06;
const anyReach = 0.18;

/** Upright places all over the photo: nothing but the picture will tell them apart. */
function placesAnywhere(photo: PixelSize, { width, height }: PixelSize): Corners[] {
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

/** Places that may hold the sheet, in px of the photo. */
async function candidates(photo: LinearRaster, pause: () => Promise<void>): Promise<Corners[]> {
  const small = reducedRaster(photo, linesPx);
  const scale = photo.width / small.width;
  await pause();
  const quads: Quad[] = findQuads(small, mostQuads);
  await pause();
  const board = offBoard(small);
  await pause();
  quads.push(...findQuads(board, 4));
  await pause();
  return quads.map(({ corners }) => scaledCorners(corners, scale, scale));
}

/** So many places are looked at between two pauses: some 10 ms. */
const placesAtOnce = 40;

/** The places, each the way round that is likeliest, that look most like the sheet. */
async function likeliest(
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

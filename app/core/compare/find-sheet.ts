import type { Checkpoint } from '../palette/checkpoint.ts';
import type { LinearRaster } from '../raster/linear-raster.ts';
import { reducedRaster } from '../raster/reduced-raster.ts';
import type { PixelSize } from '../raster/size.ts';
import {
  type Alignment,
  type AlignmentTarget,
  align,
  alignmentTarget,
  likenessOf,
} from './align.ts';
import { findQuads } from './find-quads.ts';
import { type Corners, cornersOf, homographyOf, project, scaledCorners } from './homography.ts';
import { type LightPyramid, lightPyramid } from './light-pyramid.ts';
import { localShifts } from './local-shifts.ts';
import { type SettledPlace, settlePlace } from './settle-place.ts';
import { likeliest, placesAnywhere, placesOffBoard } from './sheet-places.ts';
import { seenSides } from './side-lines.ts';

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

/** So many quadrangles of lines are tried (own). */
const mostQuads = 14;

/** Likeness from which an alignment is sure, or fairly so (own); and from which no line beside it makes it doubtful. */
const sureFrom = 0.8;
const fairlyFrom = 0.62;
const plainFrom = 0.95;

/** So many parts of the sheet may lie elsewhere than they should, 0..1, where it is sure, or fairly so (own). */
const mostAstray = { sure: 0.15, fairly: 0.3 } as const;
/** How far the worst corner may be off where it is sure, or fairly so: deviations, shares of the long side (own). */
const mostDoubt = { sure: 0.0035, fairly: 0.007 } as const;

/** How sure a place is by how alike the two are, what corners and outline say, and the share of parts that lie elsewhere. */
export function surenessOf(
  likeness: number,
  { doubt, agreeing, contradicting }: SettledPlace,
  astray: number,
): Sureness {
  const isSure = likeness >= sureFrom && doubt < mostDoubt.sure && astray <= mostAstray.sure;
  if (isSure && contradicting === 0) return 'sure';
  // Where most sides don't show, or lines that don't agree, the picture alone has to be surer, or all but the same.
  const isPlain = likeness >= plainFrom || (contradicting === 0 && agreeing >= 3);
  const most = isPlain ? mostDoubt.fairly : mostDoubt.sure;
  const isFair = likeness >= fairlyFrom && doubt < most && astray <= mostAstray.fairly;
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

/** Under this likeness the sheet is sought anywhere, and not only where lines and board show one (own). */
const goodFrom = 0.7;

const sureRank: Readonly<Record<Sureness, number>> = { sure: 2, 'fairly sure': 1, 'not sure': 0 };

/**
 * Where the expected sheet lies in a photo: by what is not the board, by the straight lines in it, or anywhere; each
 * place tried and turned, the likeliest aligned by the picture itself, until one is sure. With corners of hers these
 * are taken for the start. Null where nothing looks like a sheet. Lets messages in between its parts.
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
  const alignedAt = (level: number, from: Corners): Alignment | null => {
    const target = finer[level];
    const h = homographyOf(cornersOf(target.size.width, target.size.height), from);
    return h && align(planes, h, target, roundsAt[level]);
  };
  const likeness = (h: Float64Array): number => likenessOf(planes, h, glance);
  const small = reducedRaster(photo, linesPx);
  const scale = photo.width / small.width;
  await checkpoint(0.15);
  const ways: readonly (() => readonly Corners[])[] = given
    ? [() => [scaledCorners(given, photo.width, photo.height)]]
    : [
        () => placesOffBoard(small, expected).map((place) => scaledCorners(place, scale, scale)),
        () =>
          findQuads(small, mostQuads).map(({ corners }) => scaledCorners(corners, scale, scale)),
        () => placesAnywhere(photo, glance.size),
      ];
  let best: SheetPlace | null = null;
  let likest = 0;
  for (const [n, way] of ways.entries()) {
    // What looks so much alike is that sheet, however sure its corners are.
    if ((best?.likeness ?? 0) >= sureFrom || (n === 2 && likest >= goodFrom)) break;
    const part = 0.2 + 0.25 * n;
    const pause = (): Promise<void> => checkpoint(part);
    const places = way();
    await pause();
    const starts = given ? places : await likeliest(places, likeness, glance.size, pause);
    let first: { readonly like: number; readonly corners: Corners } | null = null;
    for (const corners of starts) {
      const found = alignedAt(0, corners);
      await pause();
      if (found && found.likeness > (first?.like ?? Number.NEGATIVE_INFINITY))
        first = { like: found.likeness, corners: onPhoto(found, finer[0].size) };
    }
    // Another way to the same place comes to the same end.
    if (!first || (best && first.like < likest + 0.01)) continue;
    likest = first.like;
    const place = await refined(planes, first.corners, finer, alignedAt, pause);
    const rank = (each: SheetPlace): number => sureRank[each.sureness] + each.likeness;
    if (!best || rank(place) > rank(best)) best = place;
  }
  return (
    best && { ...best, corners: scaledCorners(best.corners, 1 / photo.width, 1 / photo.height) }
  );
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
  const last = found as Alignment | null;
  if (!last) return { corners, sureness: 'not sure', likeness: 0, doubt: 1 };
  const { size } = finer[finer.length - 1];
  const settled = settlePlace(last, seenSides(planes, last.toPhoto, size), size);
  const { likeness } = last;
  const { doubt } = settled;
  return {
    corners: onPhoto(settled, size),
    sureness: surenessOf(likeness, settled, local.astray),
    likeness,
    doubt,
  };
}

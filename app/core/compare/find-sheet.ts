import { runToEnd } from '../numeric/run-to-end.ts';
import { solveLinear } from '../numeric/solve.ts';
import { gaussianBlur } from '../raster/gaussian-blur.ts';
import { labelPixels, labelRuns } from '../raster/label-shapes.ts';
import { emptyRaster, type LinearRaster } from '../raster/linear-raster.ts';
import { type PixelSize, rasterSize } from '../raster/size.ts';
import { type Alignment, align, alignmentTarget, likenessOf } from './align.ts';
import { findQuads, type Quad } from './find-quads.ts';
import { type Corners, cornersOf, homographyOf, project, scaledCorners } from './homography.ts';
import { lightPyramid } from './light-pyramid.ts';

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

/** The part of a photo's own border, as a share of its sides, that shows the board (own). */
const rimShare = 0.03;
/** What differs from the board by so many of its own deviations is something else (own). */
const boardDeviations = 4;
const leastDeviation = 0.012;

/**
 * What in a photo is not the board: 1 where the colour differs from that of the rim, the largest such piece alone, its
 * holes left as they are. The rim's colour may slope from one side to the other.
 */
function offBoard(raster: LinearRaster): LinearRaster {
  const { width, height } = raster;
  const rim = Math.max(2, Math.round(rimShare * Math.max(width, height)));
  const planes = [raster.red, raster.green, raster.blue].map((plane) => {
    const root = plane.map((v) => Math.sqrt(Math.max(0, v)));
    runToEnd(gaussianBlur([root], raster, 1.5));
    return root;
  });
  const isRim = (x: number, y: number): boolean =>
    x < rim || y < rim || x >= width - rim || y >= height - rim;
  const differs = new Uint8Array(width * height);
  const away = new Float32Array(width * height);
  for (const plane of planes) {
    const slope = slopeOfRim(plane, raster, isRim);
    const left: number[] = [];
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x += 3)
        if (isRim(x, y)) left.push(Math.abs(plane[y * width + x] - slope(x, y)));
    left.sort((one, two) => one - two);
    const deviation = Math.max(leastDeviation, 1.4826 * (left[left.length >> 1] ?? 0));
    for (let y = 0, i = 0; y < height; y++)
      for (let x = 0; x < width; x++, i++) {
        const off = (plane[i] - slope(x, y)) / deviation;
        away[i] += off * off;
      }
  }
  for (let i = 0; i < away.length; i++) differs[i] = away[i] > boardDeviations ** 2 * 3 ? 1 : 0;
  const runs = runToEnd(labelRuns(differs, raster));
  const labels = labelPixels(runs);
  let largest = -1;
  for (let n = 0; n < runs.kinds.length; n++)
    if (runs.kinds[n] === 1 && (largest < 0 || runs.areasPx[n] > runs.areasPx[largest]))
      largest = n;
  const out = emptyRaster(width, height);
  for (let i = 0; i < labels.length; i++)
    out.red[i] = out.green[i] = out.blue[i] = labels[i] === largest ? 1 : 0;
  return out;
}

/** The plane through the rim of a picture, what stands off it left out after a first look. */
function slopeOfRim(
  plane: Float32Array,
  { width, height }: PixelSize,
  isRim: (x: number, y: number) => boolean,
): (x: number, y: number) => number {
  let fitted = (_x: number, _y: number): number => 0;
  let near = Number.POSITIVE_INFINITY;
  for (let round = 0; round < 4; round++) {
    const matrix = new Float64Array(9);
    const right = new Float64Array(3);
    let [count, sum] = [0, 0];
    for (let y = 0; y < height; y += 2)
      for (let x = 0; x < width; x += 2) {
        if (!isRim(x, y)) continue;
        const value = plane[y * width + x];
        const off = Math.abs(value - fitted(x, y));
        if (off > near) continue;
        count++;
        sum += off;
        const row = [1, x / width - 0.5, y / height - 0.5];
        for (let i = 0; i < 3; i++) {
          right[i] += row[i] * value;
          for (let j = 0; j < 3; j++) matrix[3 * i + j] += row[i] * row[j];
        }
      }
    for (let i = 0; i < 3; i++) matrix[4 * i] += 1e-6;
    if (!solveLinear(matrix, right, 3)) break;
    const [a, b, c] = right;
    fitted = (x, y) => a + b * (x / width - 0.5) + c * (y / height - 0.5);
    near = round === 0 ? 0.15 : Math.max(0.03, (2.5 * sum) / Math.max(1, count));
  }
  return fitted;
}

/** The same corners begun at each of the four: the photo may be turned. */
const turnedWays = ([a, b, c, d]: Corners): readonly Corners[] => [
  [a, b, c, d],
  [b, c, d, a],
  [c, d, a, b],
  [d, a, b, c],
];

/** Likeness from which an alignment is sure, or fairly so; and how much better than another place it must be (own). */
const sureFrom = 0.8;
const fairlyFrom = 0.62;

/** No alignment is truer than this share of the long side: paper bends, lenses too (own). */
const leastDoubt = 0.001;

const surenessOf = (likeness: number, doubt: number): Sureness => {
  if (likeness >= sureFrom && doubt < 0.004) return 'sure';
  return likeness >= fairlyFrom && doubt < 0.008 ? 'fairly sure' : 'not sure';
};

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
 * where nothing looks like a sheet.
 */
export function findSheet(
  photo: LinearRaster,
  expected: LinearRaster,
  given?: Corners,
): SheetPlace | null {
  const [glance, ...finer] = targetsOf(expected);
  const planes = lightPyramid(photo);
  const alignedAt = (level: number, from: Corners): Alignment | null => {
    const target = finer[level];
    const h = homographyOf(cornersOf(target.size.width, target.size.height), from);
    return h && align(planes, h, target, roundsAt[level]);
  };
  const starts = given
    ? [scaledCorners(given, photo.width, photo.height)]
    : likeliest(candidates(photo), (h) => likenessOf(planes, h, glance), glance.size);
  const coarse = starts.flatMap((corners) => {
    const found = alignedAt(0, corners);
    return found ? [{ found, corners: onPhoto(found, finer[0].size) }] : [];
  });
  coarse.sort((one, two) => two.found.likeness - one.found.likeness);
  const [first] = coarse;
  if (!first) return null;
  let { found, corners } = first;
  for (let level = 1; level < finer.length; level++) {
    const next = alignedAt(level, corners);
    if (!next) break;
    found = next;
    corners = onPhoto(next, finer[level].size);
  }
  const doubt = Math.hypot(found.doubt, leastDoubt);
  return {
    corners: scaledCorners(corners, 1 / photo.width, 1 / photo.height),
    sureness: surenessOf(found.likeness, doubt),
    likeness: found.likeness,
    doubt,
  };
}

/** Places that may hold the sheet, in px of the photo. */
function candidates(photo: LinearRaster): Corners[] {
  const small = reducedRaster(photo, linesPx);
  const scale = photo.width / small.width;
  const quads: Quad[] = [...findQuads(small, mostQuads), ...findQuads(offBoard(small), 4)];
  return quads.map(({ corners }) => scaledCorners(corners, scale, scale));
}

/** The places, each the way round that is likeliest, that look most like the sheet. */
function likeliest(
  places: readonly Corners[],
  likeness: (h: Float64Array) => number,
  { width, height }: PixelSize,
): Corners[] {
  const tried = places.flatMap(turnedWays).flatMap((corners) => {
    const h = homographyOf(cornersOf(width, height), corners);
    return h ? [{ corners, like: likeness(h) }] : [];
  });
  return tried
    .sort((one, two) => two.like - one.like)
    .slice(0, mostAligned)
    .map(({ corners }) => corners);
}

// The reading as the worker runs it, from a photograph's bytes on. Left out is what the browser does: to
// decode the file, to draw it on canvases, to write the pictures that are kept.

import { LastAnswers } from '../../app/core/numeric/memo.ts';
import { widthOfSigma } from '../../app/core/numeric/normal-curve.ts';
import { runToEnd } from '../../app/core/numeric/run-to-end.ts';
import { defaultPaperLab } from '../../app/core/paint/colour-of-washes.ts';
import { darkestInSteps, usualPaints } from '../../app/core/palette/library/mix-library.ts';
import type {
  ClippedShares,
  LabPlanes,
  LinearRaster,
} from '../../app/core/raster/linear-raster.ts';
import { RasterReducer } from '../../app/core/raster/raster-reducer.ts';
import type { Room } from '../../app/core/raster/room.ts';
import { type PixelSize, rasterSize } from '../../app/core/raster/size.ts';
import { edgeLimits } from '../../app/core/reading/edges/edge.ts';
import { smallestSizes } from '../../app/core/reading/masses.ts';
import { type PictureReading, readPicture } from '../../app/core/reading/read-picture.ts';
import type { Border, ReadingWishes } from '../../app/core/reading/reading.ts';
import type { Checkpoint } from '../../app/core/reading/reading-stages.ts';
import {
  type MergeSizes,
  mergeShapes,
  mergeSizes,
} from '../../app/core/reading/shapes/merge-shapes.ts';
import type { Slot } from '../../app/core/reading/slot.ts';
import { type SortedPixels, sortPixels } from '../../app/core/reading/sort-pixels.ts';
import { ReadingDesk } from '../../workers/kernels/reading-desk.ts';
import type { PhotoBytes } from './bench.ts';

/** A checkpoint that lets nothing in between: only the work is timed. */
export const noPause = async (): Promise<void> => {};

/** Area of one strip of a photograph, px, as the worker takes them off its canvas. */
const stripAreaPx = 1_048_576;

/** The working raster of a photograph, fed strip by strip. */
export function rasterOf(
  { width, height, rgba }: PhotoBytes,
  longSidePx?: number,
  room?: Room,
): { raster: LinearRaster; clipped: ClippedShares } {
  const reduced = rasterSize(width, height, longSidePx);
  const reducer = new RasterReducer({ width, height }, reduced, 'srgb', room);
  const stripRows = Math.max(1, Math.floor(stripAreaPx / width) - 1);
  for (let row = 0; row < height; row += stripRows) {
    const rows = Math.min(stripRows, height - row);
    reducer.addRows(rgba.subarray(4 * width * row, 4 * width * (row + rows)), rows);
  }
  return reducer.finish();
}

/** As large as a quarter sheet across; the other side as the picture has it. */
const sheetOf = ({ width, height }: PixelSize) => ({
  widthMm: 381,
  heightMm: (381 * height) / width,
});

const pxPerMmOf = ({ width }: PixelSize): number => width / 381;

/** As the worker has one, but for every size: none has the larger memory of another. */
const desks = new Map<string, ReadingDesk>();

function lend({ width, height }: PixelSize) {
  const size = `${width} x ${height}`;
  const desk = desks.get(size) ?? new ReadingDesk();
  desks.set(size, desk);
  return desk.lend({ width, height });
}

const knownDarkest = new LastAnswers<number>(1);

/** L* of her darkest paints and of the paper: worked out once. */
export const reach = async () => ({
  darkest: await darkestInSteps(usualPaints, noPause, knownDarkest),
  paper: defaultPaperLab[0],
});

interface ReadingTold {
  /** Called when the raster is there, with the bytes of the room it was taken of. */
  readonly opened?: (roomBytes: number) => void;
  readonly checkpoint?: Checkpoint;
  /** Of the working raster; that of the product where left out. */
  readonly longSidePx?: number;
}

/** All of it: bands, families, shapes, whites and edges of one photograph. */
export async function readBytes(
  photo: PhotoBytes,
  wishes: ReadingWishes,
  told: ReadingTold = {},
): Promise<PictureReading> {
  const { darkest, paper } = await reach();
  const tools = lend(rasterSize(photo.width, photo.height, told.longSidePx));
  const { raster, clipped } = rasterOf(photo, told.longSidePx, tools.room);
  told.opened?.(tools.room.buffer.byteLength);
  const sheet = sheetOf(raster);
  const input = { raster, clipped, sheet, wishes, darkest, paper, tools };
  const read = await readPicture(input, told.checkpoint ?? noPause);
  tools.handBack();
  return read;
}

/** What the stages of a reading hand on to the next, up to where shapes are merged. */
export interface ReadingStages {
  readonly raster: LinearRaster;
  readonly pxPerMm: number;
  /** L* of her darkest paints and of the paper. */
  readonly darkest: number;
  readonly paper: number;
  /** Simplified. */
  readonly planes: LabPlanes;
  readonly sorted: SortedPixels;
  readonly sizes: MergeSizes;
  /** Called when all of it is done with. */
  readonly handBack: () => void;
}

/** The first stages of a reading, of the same functions in the same order as `readPicture`. */
export async function stagesOf(photo: PhotoBytes, wishes: ReadingWishes): Promise<ReadingStages> {
  const { room, simplify, handBack } = lend(rasterSize(photo.width, photo.height));
  const { raster } = rasterOf(photo, undefined, room);
  const pxPerMm = pxPerMmOf(raster);
  const { darkest, paper } = await reach();
  const planes = runToEnd(simplify(raster, pxPerMm));
  const settings = { raster, wishes, darkest, paper, subject: null, pxPerMm, room };
  const sorted = runToEnd(sortPixels(planes, settings));
  const bandCount = sorted.chosen.limits.length + 1;
  const sizes = mergeSizes(bandCount, pxPerMm, smallestSizes(wishes.smallest).darks);
  return { raster, pxPerMm, darkest, paper, planes, sorted, sizes, handBack };
}

/** Merges in copies of the maps, as the reading does in its own; hands back the bands. */
export function mergedBands({ raster, sorted, sizes }: ReadingStages): Uint8Array {
  const [cells, bands] = [sorted.cellMap.slice(), sorted.bandMap.slice()];
  runToEnd(mergeShapes(cells, bands, raster, sorted.tones, sizes));
  return bands;
}

/** Least area of a shape of each band, px, the lightest band first, as a reading merges them; paper apart. */
export function leastAreasPx({ sizes, sorted }: ReadingStages): number[] {
  return Array.from({ length: sorted.chosen.limits.length + 1 }, (_, n) => {
    return n + 1 === sizes.darkestBand ? sizes.accentPx : sizes.shapePx;
  });
}

/** Borders between bands, one between bands n apart counted n times: their length, px, and what is soft of it. */
export function bandBorders(
  borders: readonly Border[],
  slots: readonly Slot[],
  pxPerMm: number,
): { lengthPx: number; soft: number } {
  let lengthPx = 0;
  let softPx = 0;
  for (const { a, b, lengthMm, soft } of borders) {
    const apart = Math.abs((slots[a]?.band ?? 0) - (slots[b]?.band ?? 0));
    lengthPx += apart * lengthMm * pxPerMm;
    softPx += soft * apart * lengthMm * pxPerMm;
  }
  return { lengthPx, soft: lengthPx > 0 ? softPx / lengthPx : 0 };
}

/** An edge of this sigma, px, is as wide from 10 % to 90 % as where a reading begins to call it soft. */
export const softSigmaPx = ({ width, height }: PixelSize): number =>
  (edgeLimits.soft * Math.max(width, height)) / widthOfSigma;

/** How far borders between bands agree with the library's, in words. */
export function bordersAlike(
  ours: { readonly lengthPx: number; readonly soft: number },
  theirs: { readonly lengthPx: number; readonly soft: number },
): string {
  const softs = [ours, theirs].map(({ soft }) => `${(100 * soft).toFixed(0)} %`);
  return `our borders between bands are ${(ours.lengthPx / theirs.lengthPx).toFixed(2)} of the library's length, soft of them ${softs.join(' and ')}`;
}

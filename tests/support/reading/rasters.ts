import '../same-bytes.ts';
import { resolve } from 'node:path';
import sharp from 'sharp';
import type { ClippedShares, LinearRaster } from '../../../app/core/raster/linear-raster.ts';
import { RasterReducer } from '../../../app/core/raster/raster-reducer.ts';
import { type PixelSize, rasterSize } from '../../../app/core/raster/size.ts';
import { type PictureReading, readPicture } from '../../../app/core/reading/read-picture.ts';
import type { ReadingWishes } from '../../../app/core/reading/reading.ts';
import { madeOnce } from '../made-once.ts';

export interface Opened {
  readonly raster: LinearRaster;
  readonly clipped: ClippedShares;
}

/** A whole picture in memory, RGBA and opaque, made the raster of that size in one strip. */
export function reducePicture(
  rgba: Uint8Array | Uint8ClampedArray,
  source: PixelSize,
  output: PixelSize,
): Opened {
  const reducer = new RasterReducer(source, output);
  reducer.addRows(rgba, source.height);
  return reducer.finish();
}

const top = resolve(import.meta.dirname, '../../..');

async function reduced(path: string, longSidePx: number): Promise<Opened> {
  const { data, info } = await sharp(resolve(top, path))
    .flatten({ background: '#fff' })
    .toColourspace('srgb')
    .ensureAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return reducePicture(data, info, rasterSize(info.width, info.height, longSidePx));
}

const before = new Map<string, Promise<Opened>>();

/** A picture below the project's folder, on white, as working raster: shared, not to be written into. */
export function opened(path: string, longSidePx = 1600): Promise<Opened> {
  const key = `${path} ${longSidePx}`;
  const picture = before.get(key) ?? reduced(path, longSidePx);
  before.set(key, picture);
  return picture;
}

export const casePicture = (name: string): Promise<Opened> =>
  opened(`tests/fixtures/cases/${name}.png`);

/** A picture painted pixel by pixel in sRGB codes. */
export function painted(
  width: number,
  height: number,
  colour: (x: number, y: number) => readonly [number, number, number],
): Opened {
  const rgba = new Uint8Array(4 * width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0, at = 4 * y * width; x < width; x++) {
      const [red, green, blue] = colour(x, y);
      rgba[at++] = red;
      rgba[at++] = green;
      rgba[at++] = blue;
      rgba[at++] = 255;
    }
  }
  return reducePicture(rgba, { width, height }, { width, height });
}

/** Read for a quarter sheet lying across, with a usual box of paints. */
export const readFor = (
  { raster, clipped }: Opened,
  wishes: ReadingWishes = {},
  sheet = { widthMm: 381, heightMm: 279 },
): Promise<PictureReading> =>
  readPicture({ raster, clipped, sheet, wishes, darkest: 12, paper: 95.5 }, async () => {});

export const photographs = [
  'app/demo/seed-heads.jpg',
  'tests/fixtures/mountain-snow.jpg',
  'tests/fixtures/forest-stream.jpg',
] as const;

/** An opened picture as read for a sheet with nothing wished for: once for all tests, not to be written into. */
export const readPhoto = (
  path: string,
  longSidePx: number,
  sheet = { widthMm: 381, heightMm: 279 },
): Promise<PictureReading> =>
  madeOnce(`read: ${JSON.stringify([path, longSidePx, sheet])}`, async () =>
    readFor(await opened(path, longSidePx), {}, sheet),
  );

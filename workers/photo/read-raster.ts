import type { RgbSpace } from '../../app/core/colour/display-p3.ts';
import type { Rgb } from '../../app/core/colour/lab.ts';
import { rasterLongSidePx } from '../../app/core/limits.ts';
import type { ClippedShares, LinearRaster } from '../../app/core/raster/linear-raster.ts';
import { RasterReducer } from '../../app/core/raster/raster-reducer.ts';
import { Room } from '../../app/core/raster/room.ts';
import { type PixelSize, rasterSize } from '../../app/core/raster/size.ts';
import { type Crop, type CutOut, cutOutOf, hasShape } from '../../app/core/reference/reference.ts';
import { decodePhoto, largestAreaPx, photoError } from './decode-photo.ts';

/** Painted beside every strip and read back with it: what comes back different was falsified. */
export const knownColours: readonly Rgb[] = [
  [0, 0, 0],
  [255, 255, 255],
  [119, 119, 119],
  [20, 20, 20],
  [235, 235, 235],
  [70, 70, 70],
  [180, 180, 180],
  [255, 0, 0],
  [0, 255, 0],
  [0, 0, 255],
  [201, 93, 41],
  [33, 97, 143],
  [88, 61, 120],
  [146, 170, 52],
  [241, 214, 150],
  [52, 44, 37],
];

type Trust = 'true' | 'shaky' | 'false';

/** Off by this much the lowest bit was played with: harmless (own, in code values 0..255). */
const harmless = 2;
const bearable = 8;

/**
 * How far the known colours, read back as RGBA bytes, may be trusted: `true` within 2 code values
 * each, `shaky` within 8 on the mean, else `false` (an empty canvas, random or constant pixels).
 */
export function judgeTrust(readBack: Uint8ClampedArray): Trust {
  let worst = 0;
  let sum = 0;
  knownColours.forEach((colour, cell) => {
    for (let channel = 0; channel < 3; channel++) {
      const off = Math.abs((readBack[cell * 4 + channel] ?? 0) - (colour[channel] as number));
      worst = Math.max(worst, off);
      sum += off;
    }
  });
  if (worst <= harmless) return 'true';
  return sum / (knownColours.length * 3) <= bearable ? 'shaky' : 'false';
}

interface Strip {
  /** RGBA bytes, opaque, row by row. */
  readonly rgba: Uint8ClampedArray;
  readonly trust: Trust;
}

const memoryIsShort =
  'The picture could not be read: memory is short. Close other tabs and try again.';

/** CSS for channels 0..255 of that space. */
const cssOf = (colour: Rgb, space: RgbSpace): string =>
  space === 'srgb'
    ? `rgb(${colour.join(' ')})`
    : `color(display-p3 ${colour.map((code) => code / 255).join(' ')})`;

/** Whether the browser paints, keeps and hands out pixels in Display P3. */
function handsOutDisplayP3(): boolean {
  const context = new OffscreenCanvas(1, 1).getContext('2d', { colorSpace: 'display-p3' });
  if (context?.getImageData(0, 0, 1, 1).colorSpace !== 'display-p3') return false;
  const before = context.fillStyle;
  context.fillStyle = cssOf([255, 0, 0], 'display-p3'); // one it can't read is passed over
  return context.fillStyle !== before;
}

interface StripCanvas {
  /** Rows a strip can hold at most. */
  readonly rows: number;
  /** Draws rows [from, from + rows) of the cut-out and reads them back. */
  read(from: number, rows: number): Strip;
}

/**
 * A canvas that shows some rows of a cut-out at the bitmap's own scale, on white: what is
 * transparent or outside the photo is paper. Its first row carries the known colours.
 */
function createStripCanvas(
  bitmap: ImageBitmap,
  { cut, space }: CutInSpace,
  areaPx: number,
): StripCanvas {
  const width = Math.max(cut.width, knownColours.length);
  const rows = Math.max(1, Math.min(cut.height, Math.floor(areaPx / width) - 1));
  const canvas = new OffscreenCanvas(width, rows + 1);
  const context = canvas.getContext('2d', {
    alpha: false,
    colorSpace: space,
    willReadFrequently: true,
  });
  if (!context) throw photoError(memoryIsShort);
  context.imageSmoothingEnabled = !cut.whole;
  const [a, b, c, d, e, f] = cut.matrix;
  return {
    rows,
    read(from, count) {
      context.setTransform(1, 0, 0, 1, 0, 0);
      context.fillStyle = '#fff';
      context.fillRect(0, 0, width, rows + 1);
      context.setTransform(a, b, c, d, e, f + 1 - from);
      context.drawImage(bitmap, 0, 0);
      context.setTransform(1, 0, 0, 1, 0, 0);
      knownColours.forEach((colour, cell) => {
        context.fillStyle = cssOf(colour, space);
        context.fillRect(cell, 0, 1, 1);
      });
      const known = context.getImageData(0, 0, knownColours.length, 1).data;
      return { rgba: context.getImageData(0, 1, cut.width, count).data, trust: judgeTrust(known) };
    },
  };
}

/** Canvas area of a strip, px: small enough to let a cancel in between every few milliseconds. */
const stripAreaPx = 1_048_576;
const smallStripAreaPx = 65_536;

const untrue =
  "This browser hands out changed pixels (a protection against tracking), so the values of the picture can't be read. Allow this page to read pictures, or open it in another browser.";

interface CutInSpace {
  readonly cut: CutOut;
  /** Whose codes are handed out. */
  readonly space: RgbSpace;
}

interface StripSink {
  /** Takes the next rows of the cut-out: RGBA bytes, opaque. */
  take(rgba: Uint8ClampedArray, rows: number): void;
  /** Between strips: part 0..1 read. Throws to stop. */
  pause(part: number): Promise<void>;
}

/**
 * Reads a cut-out from top to bottom. An empty or falsified strip is tried once more on a smaller
 * canvas, for short memory gives empty ones. Answers whether the pixels were slightly changed.
 * Errors: `PhotoError` where they are not to be trusted at all.
 */
async function readStrips(
  bitmap: ImageBitmap,
  source: CutInSpace,
  sink: StripSink,
): Promise<{ shaky: boolean }> {
  const { cut } = source;
  let canvas = createStripCanvas(bitmap, source, stripAreaPx);
  let small = false;
  let shaky = false;
  for (let row = 0; row < cut.height; ) {
    const rows = Math.min(canvas.rows, cut.height - row);
    const strip = canvas.read(row, rows);
    if (strip.trust === 'false') {
      if (small) throw photoError(untrue);
      small = true;
      canvas = createStripCanvas(bitmap, source, smallStripAreaPx);
      continue;
    }
    if (strip.trust === 'shaky') shaky = true;
    sink.take(strip.rgba, rows);
    row += rows;
    await sink.pause(row / cut.height);
  }
  return { shaky };
}

interface ReadRaster {
  readonly raster: LinearRaster;
  readonly clipped: ClippedShares;
  /** True where the browser was found to change pixels a little as they are read. */
  readonly shaky: boolean;
  /** True where part of the photo is surely missing in the file. */
  readonly damaged: boolean;
}

/** Where memory was short before, the photo is decoded at a quarter of the area as well. */
const areaFor = (longSidePx: number): number =>
  longSidePx >= rasterLongSidePx ? largestAreaPx : largestAreaPx / 4;

/** Another shape would be stretched onto the sheet, and its drawing with it. */
function checkShape(photo: PixelSize, crop: Crop, shape: number): void {
  if (hasShape(photo, crop, shape)) return;
  throw Object.assign(
    new Error('The part cut from the photo has not the shape of your sheet. Set the sheet again.'),
    { name: 'CropError' },
  );
}

/**
 * From a photo's bytes to the working raster of its crop, averaged in linear light; colours beyond
 * sRGB are kept where the photo may have them and the browser hands them out. `pause` is awaited
 * between strips with the part done, 0..1, and may throw to stop. `shape` is width to height of the sheet it is for,
 * `roomFor` gives the room that the raster is taken of.
 * Errors: `PhotoError`; `CropError` where the crop has another shape.
 */
export async function readRaster(
  photo: Blob,
  crop: Crop,
  longSidePx: number,
  pause: (part: number) => Promise<void>,
  shape?: number,
  roomFor: (size: PixelSize) => Room = () => new Room(),
): Promise<ReadRaster> {
  const { bitmap, size, wide, damaged } = await decodePhoto(photo, areaFor(longSidePx));
  try {
    if (shape !== undefined) checkShape(size, crop, shape);
    await pause(0.2); // decoding is the browser's; by experience about a fifth of the whole
    const cut = cutOutOf(bitmap, crop);
    const space: RgbSpace = wide && handsOutDisplayP3() ? 'display-p3' : 'srgb';
    const reduced = rasterSize(cut.width, cut.height, longSidePx);
    const reducer = new RasterReducer(cut, reduced, space, roomFor(reduced));
    const { shaky } = await readStrips(
      bitmap,
      { cut, space },
      {
        take: (rgba, rows) => reducer.addRows(rgba, rows),
        pause: (part) => pause(0.2 + 0.8 * part),
      },
    );
    return { ...reducer.finish(), shaky, damaged };
  } finally {
    bitmap.close();
  }
}

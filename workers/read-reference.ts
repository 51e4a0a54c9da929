import type { Warning } from '../app/model/reading.ts';
import type { OnPictures, ReadRequest, ReadResult, Stage } from './analysis-api.ts';
import { alterRaster } from './kernels/alter/alter-raster.ts';
import { defaultPaperLab } from './kernels/optics/default-paper.ts';
import { darkestInSteps, usualPaints } from './kernels/palette/darkest-of.ts';
import { readPicture } from './kernels/read-picture.ts';
import { pictureJpeg } from './photo/picture-jpeg.ts';
import { rasterBitmaps } from './photo/raster-bitmaps.ts';
import { readRaster } from './photo/read-raster.ts';

const thumbnailLongSidePx = 480;

/** Share of the whole that opening takes, by experience with a 12-megapixel photo. */
const openingPart = 0.35;

const shakyWarning: Warning = {
  code: 'untrue-pixels',
  text: 'This browser changes the colours of pictures a little as they are read: take values near a limit with care, or use another browser.',
};

/**
 * The whole reading of a reference: photo, raster, its pictures, then values, families and shapes.
 * `pause` is awaited between pieces of work with the part done and may throw to stop.
 */
export async function readReference(
  request: ReadRequest,
  handOver: OnPictures,
  pause: (part: number, stage: Stage) => Promise<void>,
): Promise<ReadResult> {
  const { photo, crop, sheet, wishes, longSidePx } = request;
  const { raster, clipped, shaky } = await readRaster(photo, crop, longSidePx, (part) =>
    pause(openingPart * part, 'opening'),
  );
  // Into the raster just read, never into the photo: all that follows sees what she wants to paint.
  const pxPerMm = Math.sqrt((raster.width * raster.height) / (sheet.widthMm * sheet.heightMm));
  const altering = alterRaster(raster, wishes.alterations ?? [], pxPerMm);
  while (!altering.next().done) await pause(openingPart, 'opening');
  const { reference, grey, picture } = await rasterBitmaps(raster);
  handOver({ reference, grey }); // grey at once: she looks at values while the rest is worked out
  const darkest = await darkestInSteps(usualPaints, () => pause(openingPart, 'looking'));
  const { reading, slotMap, bandMap, lightnessMap } = await readPicture(
    {
      raster,
      clipped,
      sheet: { widthMm: sheet.widthMm, heightMm: sheet.heightMm },
      wishes,
      darkest,
      paper: defaultPaperLab[0],
    },
    (part, stage) => pause(openingPart + (0.95 - openingPart) * part, stage),
  );
  const referenceJpeg = await pictureJpeg(picture, Math.max(raster.width, raster.height), 0.92);
  const thumbnail = await pictureJpeg(picture, thumbnailLongSidePx, 0.85);
  await pause(1, 'shapes');
  const warnings = shaky ? [shakyWarning, ...reading.warnings] : reading.warnings;
  return {
    reading: { ...reading, warnings },
    slotMap,
    bandMap,
    lightnessMap,
    referenceJpeg,
    thumbnail,
  };
}

import type { LastAnswers } from '../app/core/numeric/memo.ts';
import { defaultPaperLab } from '../app/core/paint/colour-of-washes.ts';
import { darkestInSteps, usualPaints } from '../app/core/palette/library/mix-library.ts';
import { emptyRaster } from '../app/core/raster/linear-raster.ts';
import { computePxPerMm } from '../app/core/raster/size.ts';
import { alterRaster } from '../app/core/reading/alter/alter-raster.ts';
import { photoWarnings } from '../app/core/reading/photo-warnings.ts';
import { readPicture } from '../app/core/reading/read-picture.ts';
import type { ProgressPhase } from '../app/core/reading/reading.ts';
import type { OnPictures, ReadRequest, ReadResult } from './api.ts';
import { quickSimplify } from './kernels/wasm-simplify.ts';
import { encodeJpeg, makeRasterBitmaps } from './photo/make-pictures.ts';
import { readRaster } from './photo/read-raster.ts';

const practiceWidthPx = 320;
const practiceHeightPx = 240;

/** Waves of light and shade in all hues: every part of a reading has something to do. */
function practiceRaster() {
  const raster = emptyRaster(practiceWidthPx, practiceHeightPx);
  for (let y = 0, i = 0; y < practiceHeightPx; y++) {
    for (let x = 0; x < practiceWidthPx; x++, i++) {
      const wave = (1 + Math.sin(x / 11) * Math.cos(y / 17)) / 2;
      raster.red[i] = wave;
      raster.green[i] = (wave * x) / practiceWidthPx;
      raster.blue[i] = (wave * y) / practiceHeightPx;
    }
  }
  return raster;
}

/**
 * Reads a small made picture for nothing: the engine compiles what a reading runs through, so that her
 * first picture takes no longer than her second.
 */
export async function warmReading(pause: () => Promise<void>): Promise<void> {
  await readPicture(
    {
      raster: practiceRaster(),
      clipped: { light: 0, dark: 0 },
      sheet: { widthMm: 80, heightMm: 60 },
      wishes: {},
      darkest: 25,
      paper: 95,
      simplify: quickSimplify,
    },
    pause,
  );
}

const thumbnailLongSidePx = 480;

/** Share of the whole that opening takes, by experience with a 12-megapixel photo. */
const openingPart = 0.35;

/**
 * The whole reading of a reference: photo, raster, its pictures, then values, families and shapes.
 * `pause` is awaited between pieces of work with the part done and may throw to stop. `knownDarkest` spares
 * what was worked out before.
 */
export async function readReference(
  request: ReadRequest,
  handOver: OnPictures,
  pause: (part: number, stage: ProgressPhase) => Promise<void>,
  knownDarkest: LastAnswers<number>,
): Promise<ReadResult> {
  const { photo, crop, sheet, wishes, longSidePx } = request;
  const { raster, clipped, shaky, damaged } = await readRaster(
    photo,
    crop,
    longSidePx,
    (part) => pause(openingPart * part, 'opening'),
    sheet.widthMm / sheet.heightMm,
  );
  // Into the raster just read, never into the photo: all that follows sees what she wants to paint.
  const pxPerMm = computePxPerMm(raster, sheet);
  const altering = alterRaster(raster, wishes.alterations ?? [], pxPerMm);
  while (!altering.next().done) await pause(openingPart, 'opening');
  const { reference, grey, picture } = await makeRasterBitmaps(raster);
  handOver({ reference, grey }); // grey at once: she looks at values while the rest is worked out
  const darkest = await darkestInSteps(
    usualPaints,
    () => pause(openingPart, 'looking'),
    knownDarkest,
  );
  const { reading, slotMap, bandMap, lightnessMap } = await readPicture(
    {
      raster,
      clipped,
      sheet: { widthMm: sheet.widthMm, heightMm: sheet.heightMm },
      wishes,
      darkest,
      paper: defaultPaperLab[0],
      simplify: quickSimplify,
    },
    (part, stage) => pause(openingPart + (0.95 - openingPart) * part, stage),
  );
  const referenceJpeg = await encodeJpeg(picture, Math.max(raster.width, raster.height), 0.92);
  const thumbnail = await encodeJpeg(picture, thumbnailLongSidePx, 0.85);
  await pause(1, 'shapes');
  const share = crop.size[0] * crop.size[1];
  const warnings = [...photoWarnings({ damaged, shaky, share }), ...reading.warnings];
  return {
    reading: { ...reading, warnings },
    slotMap,
    bandMap,
    lightnessMap,
    referenceJpeg,
    thumbnail,
  };
}

import type { LastAnswers } from '../app/core/numeric/memo.ts';
import { defaultPaperLab } from '../app/core/paint/colour-of-washes.ts';
import { darkestInSteps, usualPaints } from '../app/core/palette/library/mix-library.ts';
import { emptyRaster } from '../app/core/raster/linear-raster.ts';
import type { Room } from '../app/core/raster/room.ts';
import { computePxPerMm, type PixelSize } from '../app/core/raster/size.ts';
import { alterRaster } from '../app/core/reading/alter/alter-raster.ts';
import { photoWarnings } from '../app/core/reading/photo-warnings.ts';
import { readPicture } from '../app/core/reading/read-picture.ts';
import type { ProgressPhase } from '../app/core/reading/reading.ts';
import type { ReadingTools } from '../app/core/reading/reading-input.ts';
import type { OnPictures, ReadRequest, ReadResult } from './api.ts';
import { type LentTools, ReadingDesk } from './kernels/reading-desk.ts';
import { encodeJpeg, makeRasterBitmaps } from './photo/make-pictures.ts';
import { readRaster } from './photo/read-raster.ts';

const practiceWidthPx = 320;
const practiceHeightPx = 240;

/** Waves of light and shade in all hues: every part of a reading has something to do. */
function practiceRaster(room: Room) {
  const raster = emptyRaster(practiceWidthPx, practiceHeightPx, room);
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

const desk = new ReadingDesk();

/** The memory of a reading is let go when no other was asked for so long, ms. */
const keptMs = 60_000;
let clearing: ReturnType<typeof setTimeout> | undefined;

/** Lends tools for one piece of work; one after the other has the same memory. */
async function withTools<T>(
  work: (lend: (size: PixelSize) => ReadingTools) => Promise<T>,
): Promise<T> {
  clearTimeout(clearing);
  const lent: LentTools[] = [];
  try {
    return await work((size) => {
      const tools = desk.lend(size);
      lent.push(tools);
      return tools;
    });
  } finally {
    for (const { handBack } of lent) handBack();
    clearTimeout(clearing);
    clearing = setTimeout(() => desk.clear(), keptMs);
  }
}

/**
 * Reads a small made picture for nothing: the engine compiles what a reading runs through, so that her
 * first picture takes no longer than her second.
 */
export function warmReading(pause: () => Promise<void>): Promise<void> {
  return withTools(async (lend) => {
    const tools = lend({ width: practiceWidthPx, height: practiceHeightPx });
    const raster = practiceRaster(tools.room);
    const sheet = { widthMm: 80, heightMm: 60 };
    const clipped = { light: 0, dark: 0 };
    await readPicture({ raster, clipped, sheet, wishes: {}, darkest: 25, paper: 95, tools }, pause);
  });
}

const thumbnailLongSidePx = 480;

/** Share of the whole that opening takes, by experience with a 12-megapixel photo. */
const openingPart = 0.35;

/**
 * The whole reading of a reference: photo, raster, its pictures, then values, families and shapes.
 * `pause` is awaited between pieces of work with the part done and may throw to stop. `knownDarkest` spares
 * what was worked out before.
 */
export function readReference(
  request: ReadRequest,
  handOver: OnPictures,
  pause: (part: number, stage: ProgressPhase) => Promise<void>,
  knownDarkest: LastAnswers<number>,
): Promise<ReadResult> {
  return withTools((lend) => readWith(lend, request, handOver, pause, knownDarkest));
}

async function readWith(
  lend: (size: PixelSize) => ReadingTools,
  request: ReadRequest,
  handOver: OnPictures,
  pause: (part: number, stage: ProgressPhase) => Promise<void>,
  knownDarkest: LastAnswers<number>,
): Promise<ReadResult> {
  let tools: ReadingTools | undefined;
  const { photo, crop, sheet, wishes, longSidePx } = request;
  const { raster, clipped, shaky, damaged } = await readRaster(
    photo,
    crop,
    longSidePx,
    (part) => pause(openingPart * part, 'opening'),
    sheet.widthMm / sheet.heightMm,
    (size) => {
      tools = lend(size);
      return tools.room;
    },
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
      ...(tools && { tools }),
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

import * as Comlink from 'comlink';
import type { PlanWishes } from '../app/core/decisions/plan-wishes.ts';
import { outlineOf } from '../app/core/outline/outline.ts';
import { mixNeighbours } from '../app/core/paint/mix-neighbours.ts';
import { mixingChart } from '../app/core/paint/mixing-chart.ts';
import { knownPaints, paintBox, paintCard, pigmentTable } from '../app/core/paint/paint-box.ts';
import { darkestInSteps, usualPaints } from '../app/core/palette/library/darkest-mix.ts';
import { keptLibrary } from '../app/core/palette/library/mix-library.ts';
import { paintsAllowed } from '../app/core/palette/paints-allowed.ts';
import { buildPlan } from '../app/core/plan/build-plan.ts';
import { paletteOffers } from '../app/core/plan/offer-palettes.ts';
import { createPlanMemory } from '../app/core/plan/solve/solve-palette.ts';
import { wishedPalette } from '../app/core/plan/targets/planned-slots.ts';
import { softBlend, softEdges } from '../app/core/reading/edges/soft-blend.ts';
import type { ProgressPhase } from '../app/core/reading/reading.ts';
import type { AnalysisApi, OnProgress } from './api.ts';
import {
  cancelJob,
  createHandOver,
  createProgressTeller,
  idleTurn,
  nextTurn,
  runJob,
} from './jobs.ts';
import { fitMeasuredPaint, measurePatches } from './measure-patches.ts';
import { decodePhoto, largestAreaPx } from './photo/decode-photo.ts';
import { makePreview, makeRasterBitmaps, previewLongSidePx } from './photo/make-pictures.ts';
import { readRaster } from './photo/read-raster.ts';
import { readReference, warmReading } from './read-reference.ts';
import { forgetSubject, subjectLine } from './subject-line.ts';
import { washShapes } from './wash-shapes.ts';

/**
 * Throws a plain Error named 'WishError', with a sentence for her, where her wishes for the palette
 * contradict each other: only a name and a message survive the way to the page.
 */
function checkWishes(wishes: PlanWishes): void {
  try {
    paintsAllowed(knownPaints(wishes.ownPaints), wishedPalette(wishes));
  } catch (thrown) {
    if (!(thrown instanceof RangeError)) throw thrown;
    const error = new Error(thrown.message);
    error.name = 'WishError';
    throw error;
  }
}

// The worker's entry: jobs with a way to stop, the kernels in order, and what is handed over.
/** A job that can be cancelled and tells how far it is. */
async function toldJob<T>(
  job: number,
  onProgress: OnProgress,
  work: (pause: (part: number, stage: ProgressPhase) => Promise<void>) => Promise<T>,
): Promise<T> {
  const teller = createProgressTeller(onProgress);
  try {
    return await runJob(job, (pause) =>
      work((part, stage) => {
        teller.tell(part, stage);
        return pause();
      }),
    );
  } finally {
    teller.end();
  }
}

/** She changes the steps, the time or the air far more often than paints and picture. */
const memory = createPlanMemory();
/** What a reading runs through is compiled then. */
let hasRead = false;

const api: AnalysisApi = {
  openPhoto: (job, photo) =>
    runJob(job, async (pause) => {
      const { bitmap, size } = await decodePhoto(photo, largestAreaPx);
      try {
        await pause();
        const preview = makePreview(bitmap, size, previewLongSidePx);
        return Comlink.transfer({ ...size, preview }, [preview]);
      } finally {
        bitmap.close();
      }
    }),

  async read(job, request, onPictures, onProgress) {
    hasRead = true;
    forgetSubject();
    const hand = createHandOver(onPictures);
    const result = await toldJob(job, onProgress, async (pause) => {
      const read = await readReference(request, hand.over, pause);
      await hand.received(); // another port's messages: else the reading might be there first
      return read;
    }).finally(hand.end);
    const { slotMap, bandMap, lightnessMap, referenceJpeg, thumbnail } = result;
    // Only what stands in this list is handed over; a transfer named deeper is not heeded.
    const maps = [slotMap.buffer, bandMap.buffer, lightnessMap.buffer];
    return Comlink.transfer(result, [...maps, referenceJpeg, thumbnail]);
  },

  async plan(job, reading, wishes, onProgress) {
    checkWishes(wishes);
    return toldJob(job, onProgress, (pause) => buildPlan(reading, wishes, pause, memory));
  },

  async palettes(job, reading, wishes, onProgress) {
    checkWishes(wishes);
    return toldJob(job, onProgress, (pause) => paletteOffers(reading, wishes, pause));
  },

  async subjectLine(job, request) {
    const found = await runJob(job, (pause) => subjectLine(request, pause));
    return found && Comlink.transfer(found, [found.mask.buffer]);
  },

  async washShapes(job, request) {
    const found = await runJob(job, (pause) => washShapes(request, pause));
    return Comlink.transfer(found, [found.map.buffer]);
  },

  async softBlend(slotMap, size, edges) {
    const blend = softBlend(slotMap, size, softEdges(edges, size));
    const { pixels, partners, shares } = blend;
    return Comlink.transfer(blend, [pixels.buffer, partners.buffer, shares.buffer]);
  },
  outline: async (reading, slotMap, sizes) => outlineOf(reading, slotMap, sizes),

  async pictures(jpeg) {
    const whole = { centre: [0.5, 0.5], size: [1, 1], turn: 0 } as const;
    const { raster } = await readRaster(new Blob([jpeg]), whole, 1600, nextTurn);
    const { reference, grey } = await makeRasterBitmaps(raster);
    return Comlink.transfer({ reference, grey }, [reference, grey]);
  },

  paintBox: async (own) => knownPaints(own).map(paintCard),
  pigmentTable: async () => pigmentTable,
  async opticsLike(id) {
    const paint = paintBox.find((each) => each.id === id);
    return paint ? { K: paint.K, S: paint.S } : null;
  },
  measurePatches: (job, photo, frames) =>
    runJob(job, (pause) => measurePatches(photo, frames, pause)),
  fitPaint: async (patches, isWhite, own) => fitMeasuredPaint(patches, isWhite, own),
  mixNeighbours: async (paints, below, mix) => mixNeighbours(paints, below, mix),
  mixingChart: async (paints) => mixingChart(paints),
  cancel: cancelJob,
  async warmUp(box) {
    await darkestInSteps(usualPaints, idleTurn);
    if (!hasRead) await warmReading(idleTurn);
    await keptLibrary(paintsAllowed(knownPaints(box.ownPaints), box).paints, idleTurn);
  },
};

Comlink.expose(api);

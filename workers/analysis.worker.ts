// The worker's entry: jobs with a way to stop, the kernels in order, and what is handed over.
import * as Comlink from 'comlink';
import { outlineOf } from '../app/model/outline.ts';
import type { AnalysisApi, OnProgress, Stage } from './analysis-api.ts';
import { checkWishes } from './check-wishes.ts';
import { handOver } from './hand-over.ts';
import { cancelJob, idleTurn, nextTurn, runJob } from './jobs.ts';
import { softBlend } from './kernels/edges/soft-blend.ts';
import { softEdges } from './kernels/edges/soft-edges.ts';
import { mixNeighbours } from './kernels/optics/mix-neighbours.ts';
import { mixingChart } from './kernels/optics/mixing-chart.ts';
import { knownPaints, paintBox, paintCard } from './kernels/optics/paint-box.ts';
import { pigmentTable } from './kernels/optics/pigment-table.ts';
import { darkestInSteps, usualPaints } from './kernels/palette/darkest-of.ts';
import { keptLibrary } from './kernels/palette/kept-library.ts';
import { paintsAllowed } from './kernels/palette/paints-allowed.ts';
import { paletteOffers } from './kernels/palette/palette-offers.ts';
import { buildWashPlan } from './kernels/plan/build-wash-plan.ts';
import { createPlanMemory } from './kernels/plan/plan-memory.ts';
import { fitMeasuredPaint, measurePatches } from './measure-patches.ts';
import { decodePhoto } from './photo/decode-photo.ts';
import { largestAreaPx } from './photo/decoded-size.ts';
import { previewLongSidePx, previewOf } from './photo/preview-of.ts';
import { rasterBitmaps } from './photo/raster-bitmaps.ts';
import { readRaster } from './photo/read-raster.ts';
import { progressTeller } from './progress-teller.ts';
import { readReference } from './read-reference.ts';
import { forgetSubject, subjectLine } from './subject-line.ts';
import { warmReading } from './warm-reading.ts';
import { washShapes } from './wash-shapes.ts';

/** A job that can be cancelled and tells how far it is. */
async function toldJob<T>(
  job: number,
  onProgress: OnProgress,
  work: (pause: (part: number, stage: Stage) => Promise<void>) => Promise<T>,
): Promise<T> {
  const teller = progressTeller(onProgress);
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
        const preview = previewOf(bitmap, size, previewLongSidePx);
        return Comlink.transfer({ ...size, preview }, [preview]);
      } finally {
        bitmap.close();
      }
    }),

  async read(job, request, onPictures, onProgress) {
    hasRead = true;
    forgetSubject();
    const hand = handOver(onPictures);
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
    return toldJob(job, onProgress, (pause) => buildWashPlan(reading, wishes, pause, memory));
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
    const { reference, grey } = await rasterBitmaps(raster);
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

// The worker's entry: jobs with a way to stop, the core's work in order, and what is handed over.

import * as Comlink from 'comlink';
import { compareSheet } from '../app/core/compare/compare-sheet.ts';
import type { PlanWishes } from '../app/core/decisions/plan-wishes.ts';
import { rasterLongSidePx } from '../app/core/limits.ts';
import { outlineOf } from '../app/core/outline/outline.ts';
import { findPatches } from '../app/core/paint/measure/find-patches.ts';
import { fitPaint } from '../app/core/paint/measure/fit-paint.ts';
import type { MeasuredPhoto, PatchFrame } from '../app/core/paint/measure/measured-photo.ts';
import type { PaintMeasure, PaintPatch } from '../app/core/paint/measure/paint-measure.ts';
import { refinePaints } from '../app/core/paint/measure/refine-paints.ts';
import { mixNeighbours } from '../app/core/paint/mix-neighbours.ts';
import { mixingChart } from '../app/core/paint/mixing-chart.ts';
import type { Paint, PaintCard } from '../app/core/paint/paint.ts';
import { lookAtScrap } from '../app/core/paint/paint-at-fault.ts';
import { knownPaints, paintBox, paintCard, pigmentTable } from '../app/core/paint/paint-box.ts';
import { renewBox } from '../app/core/paint/renew-paints.ts';
import { darkestInSteps, usualPaints } from '../app/core/palette/library/mix-library.ts';
import { standIns } from '../app/core/palette/offers/stand-ins.ts';
import { paintsAllowed } from '../app/core/palette/paints-allowed.ts';
import { buildPlan } from '../app/core/plan/build-plan.ts';
import { paletteOffers } from '../app/core/plan/offer-palettes.ts';
import { createPlanMemory } from '../app/core/plan/plan-memory.ts';
import { wishedPalette } from '../app/core/plan/targets/planned-slots.ts';
import { referenceRgba } from '../app/core/raster/linear-raster.ts';
import { softBlend, softEdges } from '../app/core/reading/edges/soft-blend.ts';
import type { ProgressPhase } from '../app/core/reading/reading.ts';
import { washShapes } from '../app/core/reading/shapes/wash-masses.ts';
import type { AnalysisApi, ComparedSheet, OnProgress, SheetRequest } from './api.ts';
import { cancelJob, createHandOver, createProgressTeller, idleTurn, runJob } from './jobs.ts';
import { decodedPhotoSize, decodePhoto, largestAreaPx, photoError } from './photo/decode-photo.ts';
import { makePreview, makeRasterBitmaps } from './photo/make-pictures.ts';
import { readRaster } from './photo/read-raster.ts';
import { readReference, warmReading } from './read-reference.ts';
import { forgetSubject, subjectLine } from './subject-line.ts';

/** Patches are measured on the photo at this long side, px. */
const longSidePx = 1000;

/** A white, a cool and a warm colour and an earth: paints most boxes have, that a new one is thought mixed with. */
const triedIds = [
  'pw6-titanium-white',
  'pb29-ultramarine-blue',
  'py74-arylide-yellow',
  'pbr7-burnt-sienna',
];

/** A RangeError of the core carries a painter's sentence: only a name and a message survive the way to the page. */
async function inWords<T>(work: () => T | Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (thrown) {
    throw thrown instanceof RangeError ? photoError(thrown.message, thrown) : thrown;
  }
}

/** The patches on a photo: those in her frames, or found where she set none. Errors: `PhotoError`. */
async function measurePatches(
  photo: Blob,
  frames: readonly PatchFrame[] | null,
  bareLine: number | null,
  pause: () => Promise<void>,
): Promise<MeasuredPhoto> {
  const whole = { centre: [0.5, 0.5], size: [1, 1], turn: 0 } as const;
  const { raster } = await readRaster(photo, whole, longSidePx, pause);
  await pause();
  return inWords(() => findPatches(raster, frames, bareLine));
}

type ToldPause = (part: number, stage: ProgressPhase) => Promise<void>;

/** By experience the photo is read in this share of the whole job, and the sheet is found by that one. */
const readPart = 0.3;
const foundAt = 0.6;

/** A photo of her sheet beside what its plan expects. The bitmap in the answer is the caller's. Errors: `PhotoError`. */
async function comparePhoto(
  { photo, lightnessMap, ...request }: SheetRequest,
  pause: ToldPause,
): Promise<ComparedSheet> {
  const whole = { centre: [0.5, 0.5], size: [1, 1], turn: 0 } as const;
  const { raster } = await readRaster(photo, whole, rasterLongSidePx, (part) =>
    pause(readPart * part, 'opening'),
  );
  const { width, height } = request.reading.raster;
  const grey = lightnessMap && { grey: { width, height, map: lightnessMap } };
  const { comparison, pictures } = await compareSheet(
    { ...request, photo: raster, ...grey },
    (part) => pause(readPart + (1 - readPart) * part, part < foundAt ? 'shapes' : 'values'),
  );
  const seen = new ImageData(referenceRgba(raster), raster.width, raster.height);
  return { comparison, photo: await createImageBitmap(seen), pictures };
}

/** K and S of her paint from its patches; `own` are her other paints. Errors: `PhotoError`. */
function fitMeasuredPaint(
  patches: readonly PaintPatch[],
  card: Pick<PaintCard, 'id' | 'ci'>,
  own: readonly Paint[],
  pause: () => Promise<void>,
): Promise<PaintMeasure> {
  const known = knownPaints(own);
  const named = new Set(patches.flatMap(({ is }) => (is.kind === 'half' ? [is.with] : [])));
  return inWords(() =>
    fitPaint(
      patches,
      {
        card,
        known: new Map(known.filter(({ id }) => named.has(id)).map((paint) => [paint.id, paint])),
        tried: known.filter(({ id }) => triedIds.includes(id)),
      },
      pause,
    ),
  );
}

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

/** A job that can be cancelled and tells how far it is. */
async function toldJob<T>(
  job: number,
  onProgress: OnProgress,
  work: (pause: ToldPause) => Promise<T>,
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

/** What outlives a call: she changes the steps, the time or the air far more often than paints and picture. */
const memory = createPlanMemory();
/** What a reading runs through is compiled then. */
let hasRead = false;

const api: AnalysisApi = {
  openPhoto: (job, photo) =>
    runJob(job, async (pause) => {
      const { bitmap, size } = await decodePhoto(photo, largestAreaPx);
      try {
        await pause();
        const preview = makePreview(bitmap, size, rasterLongSidePx);
        return Comlink.transfer({ ...size, preview }, [preview]);
      } finally {
        bitmap.close();
      }
    }),

  photoSize: (_job, photo) => decodedPhotoSize(photo),

  async read(job, request, onPictures, onProgress) {
    hasRead = true;
    forgetSubject();
    const hand = createHandOver(onPictures);
    const result = await toldJob(job, onProgress, async (pause) => {
      const read = await readReference(request, hand.over, pause, memory.darkest);
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
    return toldJob(job, onProgress, (pause) => paletteOffers(reading, wishes, pause, memory));
  },

  async subjectLine(job, request) {
    const found = await runJob(job, (pause) => subjectLine(request, pause));
    return found && Comlink.transfer(found, [found.mask.buffer]);
  },

  async compare(job, request, onProgress) {
    const compared = await toldJob(job, onProgress, (pause) => comparePhoto(request, pause));
    const { photo, pictures } = compared;
    if (!pictures) return Comlink.transfer(compared, [photo]);
    const { slotMap, shapes, expected, measured } = pictures;
    const { lightness, a, b, states } = measured;
    const maps = [slotMap, shapes, expected, lightness, a, b, states].map(({ buffer }) => buffer);
    return Comlink.transfer(compared, [photo, ...new Set(maps)]);
  },

  async washShapes(job, request) {
    const found = await runJob(job, (pause) => washShapes(request, pause));
    return Comlink.transfer(found, [found.map.buffer]);
  },

  async softBlend(job, slotMap, size, edges) {
    const blend = await runJob(job, async (pause) => {
      await pause(); // a screen left at once has called it off by then
      const soft = softEdges(edges, size);
      await pause();
      return softBlend(slotMap, size, soft);
    });
    const { pixels, partners, shares } = blend;
    return Comlink.transfer(blend, [pixels.buffer, partners.buffer, shares.buffer]);
  },
  outline: (job, reading, slotMap, sizes) =>
    runJob(job, async (pause) => {
      await pause();
      return outlineOf(reading, slotMap, sizes);
    }),

  async pictures(job, jpeg) {
    const whole = { centre: [0.5, 0.5], size: [1, 1], turn: 0 } as const;
    const { reference, grey } = await runJob(job, async (pause) => {
      const { raster } = await readRaster(new Blob([jpeg]), whole, rasterLongSidePx, pause);
      return makeRasterBitmaps(raster);
    });
    return Comlink.transfer({ reference, grey }, [reference, grey]);
  },

  standIns: async (_job, theirs, hers) => standIns(theirs, hers),
  paintBox: async (_job, own) => knownPaints(own).map(paintCard),
  pigmentTable: async () => pigmentTable,
  async opticsLike(_job, id) {
    const paint = paintBox.find((each) => each.id === id);
    if (!paint) return null;
    const { K, S, strength, mostLoad } = paint;
    return { K, S, ...(strength && { strength }), ...(mostLoad && { mostLoad }) };
  },
  renewBox: async (_job, box) => renewBox(box),
  measurePatches: (job, photo, frames, bareLine) =>
    runJob(job, (pause) => measurePatches(photo, frames, bareLine, pause)),
  fitPaint: (job, patches, card, own) =>
    runJob(job, (pause) => fitMeasuredPaint(patches, card, own, pause)),
  refinePaints: (job, squares, own, builtIn) =>
    runJob(job, (pause) => {
      const known = paintBox.filter(({ id }) => builtIn.includes(id));
      return inWords(() => refinePaints(squares, own, known, pause));
    }),
  mixNeighbours: async (_job, paints, below, mix, surface) =>
    mixNeighbours(paints, below, mix, surface),
  mixingChart: async (_job, paints, surface) => mixingChart(paints, surface),
  lookAtScrap: async (_job, ...asked) => lookAtScrap(...asked),
  cancel: cancelJob,
  async warmUp(_job, box) {
    await darkestInSteps(usualPaints, idleTurn, memory.darkest);
    if (!hasRead) await warmReading(idleTurn);
    const { paints } = paintsAllowed(knownPaints(box.ownPaints, box.strengths), box);
    await memory.library.warm(paints, idleTurn);
  },
};

Comlink.expose(api);

import * as Comlink from 'comlink';
import type {
  OnPictures,
  OnProgress,
  PhotoFacts,
  Pictures,
  ReadRequest,
  ReadResult,
  SubjectRequest,
  SubjectResult,
  WashShapes,
  WashShapesRequest,
} from '../../workers/api.ts';
import type { PlanWishes } from '../core/decisions/plan-wishes.ts';
import type { BoxWishes } from '../core/decisions/wishes.ts';
import type { Outline } from '../core/outline/outline.ts';
import type { MeasuredPhoto, PatchFrame } from '../core/paint/measure/measured-photo.ts';
import type { PaintMeasure, PaintPatch } from '../core/paint/measure/paint-measure.ts';
import type { LaidMix, MixingChart, MixNeighbours } from '../core/paint/mix.ts';
import type { Paint, PaintCard } from '../core/paint/paint.ts';
import type { PigmentTraits } from '../core/paint/paint-traits.ts';
import type { PaletteOffers } from '../core/palette/offers/palette-offer.ts';
import type { WashPlan } from '../core/plan/plan.ts';
import type { SoftBlend } from '../core/raster/paint-slots.ts';
import type { PixelSize } from '../core/raster/size.ts';
import type { Edge } from '../core/reading/edges/edge.ts';
import type { MassSizes } from '../core/reading/masses.ts';
import type { Reading } from '../core/reading/reading.ts';
import { createCallDesk, type DeskOptions } from './call-desk.ts';

/**
 * The only door to the analysis worker. An abort frees the caller at once with the signal's
 * reason. Rejections: `AbortError`; `PhotoError` (a sentence about the photo); `WishError` (a
 * sentence: wishes for the palette contradict each other); `AnalysisError` (a sentence: the work stopped; the next call uses a fresh worker). Bitmaps handed out are the
 * caller's to close.
 */
export interface AnalysisClient {
  openPhoto(signal: AbortSignal, photo: Blob): Promise<PhotoFacts>;
  read(
    signal: AbortSignal,
    request: ReadRequest,
    onPictures: OnPictures,
    onProgress?: OnProgress,
  ): Promise<ReadResult>;
  plan(
    signal: AbortSignal,
    reading: Reading,
    wishes: PlanWishes,
    onProgress?: OnProgress,
  ): Promise<WashPlan>;
  /** Null where there is nothing to paint. */
  palettes(
    signal: AbortSignal,
    reading: Reading,
    wishes: PlanWishes,
    onProgress?: OnProgress,
  ): Promise<PaletteOffers | null>;
  /** Null where she has drawn no subject yet. */
  subjectLine(signal: AbortSignal, request: SubjectRequest): Promise<SubjectResult | null>;
  washShapes(signal: AbortSignal, request: WashShapesRequest): Promise<WashShapes>;
  softBlend(
    signal: AbortSignal,
    slotMap: Uint8Array,
    size: PixelSize,
    edges: readonly Edge[],
  ): Promise<SoftBlend>;
  outline(
    signal: AbortSignal,
    reading: Reading,
    slotMap: Uint8Array,
    sizes: MassSizes,
  ): Promise<Outline>;
  pictures(signal: AbortSignal, jpeg: ArrayBuffer): Promise<Pictures>;
  paintBox(signal: AbortSignal, own: readonly Paint[]): Promise<PaintCard[]>;
  pigmentTable(signal: AbortSignal): Promise<readonly PigmentTraits[]>;
  opticsLike(signal: AbortSignal, id: string): Promise<Pick<Paint, 'K' | 'S'> | null>;
  measurePatches(
    signal: AbortSignal,
    photo: Blob,
    frames: readonly PatchFrame[] | null,
  ): Promise<MeasuredPhoto>;
  fitPaint(
    signal: AbortSignal,
    patches: readonly PaintPatch[],
    isWhite: boolean,
    own: readonly Paint[],
  ): Promise<PaintMeasure>;
  mixNeighbours(
    signal: AbortSignal,
    paints: readonly Paint[],
    below: readonly LaidMix[],
    mix: LaidMix,
  ): Promise<MixNeighbours>;
  mixingChart(signal: AbortSignal, paints: readonly Paint[]): Promise<MixingChart>;
  warmUp(signal: AbortSignal, box: BoxWishes): Promise<void>;
  dispose(): void;
}

const defaults: DeskOptions = {
  createWorker: () =>
    new Worker(new URL('../../workers/analysis.worker.ts', import.meta.url), { type: 'module' }),
  cancelMs: 250,
  silenceMs: 60_000,
};

const closePictures = ({ reference, grey }: Pictures): void => {
  reference.close();
  grey.close();
};

export function createAnalysisClient(options: Partial<DeskOptions> = {}): AnalysisClient {
  const desk = createCallDesk({ ...defaults, ...options });
  // Nothing is heard of a job whose caller has gone.
  const heard = (job: number, onProgress: OnProgress | undefined): OnProgress =>
    Comlink.proxy((part, stage) => {
      if (desk.isOpen(job)) onProgress?.(part, stage);
    });
  return {
    openPhoto: (signal, photo) =>
      desk.call(
        signal,
        (api, job) => api.openPhoto(job, photo),
        (late) => late.preview.close(),
      ),
    read: (signal, request, onPictures, onProgress) =>
      desk.call(signal, (api, job) => {
        const received = Comlink.proxy((pictures: Pictures) => {
          if (desk.isOpen(job)) onPictures(pictures);
          else closePictures(pictures);
        });
        return api.read(job, request, received, heard(job, onProgress));
      }),
    plan: (signal, reading, wishes, onProgress) =>
      desk.call(signal, (api, job) => api.plan(job, reading, wishes, heard(job, onProgress))),
    palettes: (signal, reading, wishes, onProgress) =>
      desk.call(signal, (api, job) => api.palettes(job, reading, wishes, heard(job, onProgress))),
    subjectLine: (signal, request) =>
      desk.call(signal, (api, job) => api.subjectLine(job, request)),
    washShapes: (signal, request) => desk.call(signal, (api, job) => api.washShapes(job, request)),
    softBlend: (signal, slotMap, size, edges) =>
      desk.call(signal, (api) => api.softBlend(slotMap, size, edges)),
    outline: (signal, reading, slotMap, sizes) =>
      desk.call(signal, (api) => api.outline(reading, slotMap, sizes)),
    pictures: (signal, jpeg) => desk.call(signal, (api) => api.pictures(jpeg), closePictures),
    paintBox: (signal, own) => desk.call(signal, (api) => api.paintBox(own)),
    pigmentTable: (signal) => desk.call(signal, (api) => api.pigmentTable()),
    measurePatches: (signal, photo, frames) =>
      desk.call(signal, (api, job) => api.measurePatches(job, photo, frames)),
    fitPaint: (signal, patches, isWhite, own) =>
      desk.call(signal, (api) => api.fitPaint(patches, isWhite, own)),
    opticsLike: (signal, id) => desk.call(signal, (api) => api.opticsLike(id)),
    mixNeighbours: (signal, paints, below, mix) =>
      desk.call(signal, (api) => api.mixNeighbours(paints, below, mix)),
    mixingChart: (signal, paints) => desk.call(signal, (api) => api.mixingChart(paints)),
    warmUp: (signal, box) => desk.call(signal, (api) => api.warmUp(box)),
    dispose: desk.dispose,
  };
}

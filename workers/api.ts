// THE contract between page and worker: types only.

import type { PlanWishes } from '../app/core/decisions/plan-wishes.ts';
import type { BoxWishes } from '../app/core/decisions/wishes.ts';
import type { Outline } from '../app/core/outline/outline.ts';
import type { MeasuredPhoto, PatchFrame } from '../app/core/paint/measure/measured-photo.ts';
import type { PaintMeasure, PaintPatch } from '../app/core/paint/measure/paint-measure.ts';
import type { LaidMix, MixingChart, MixNeighbours } from '../app/core/paint/mix.ts';
import type { Paint, PaintCard } from '../app/core/paint/paint.ts';
import type { PigmentTraits } from '../app/core/paint/paint-traits.ts';
import type { PaletteOffers } from '../app/core/palette/offers/palette-offer.ts';
import type { WashPlan } from '../app/core/plan/plan.ts';
import type { SoftBlend } from '../app/core/raster/paint-slots.ts';
import type { PixelSize } from '../app/core/raster/size.ts';
import type { Edge } from '../app/core/reading/edges/edge.ts';
import type { MassSizes, MassWash } from '../app/core/reading/masses.ts';
import type { ProgressPhase, Reading, ReadingWishes } from '../app/core/reading/reading.ts';
import type { Slot } from '../app/core/reading/slot.ts';
import type { SubjectFacts, SubjectStroke } from '../app/core/reading/subject/subject.ts';
import type { Crop } from '../app/core/reference/reference.ts';
import type { Sheet } from '../app/core/reference/sheet.ts';

export interface ReadRequest {
  /** The photo's bytes as stored, never re-encoded. */
  readonly photo: Blob;
  readonly crop: Crop;
  readonly sheet: Sheet;
  readonly wishes: ReadingWishes;
  /** Long side of the working raster, px; 1600 unless memory was short before. */
  readonly longSidePx: number;
}

export interface ReadResult {
  readonly reading: Reading;
  /** Index into reading.slots for every pixel, row by row. */
  readonly slotMap: Uint8Array;
  /** 1..k for every pixel, after merging. */
  readonly bandMap: Uint8Array;
  /** Simplified lightness of every pixel: round(L* x 2.55), 0..255. */
  readonly lightnessMap: Uint8Array;
  /** JPEG of the cropped reference, for keeping beside the plan. */
  readonly referenceJpeg: ArrayBuffer;
  /** JPEG, long side 480 px, for the list of paintings. */
  readonly thumbnail: ArrayBuffer;
}

/** Where the subject lies, while she draws: ahead of the reading, which finds the same. */
export interface SubjectRequest {
  /** Names the picture, so that what was made of it can be used again. */
  readonly picture: string;
  readonly referenceJpeg: ArrayBuffer;
  /** Long side of the reading's raster, and its px per mm on the sheet. */
  readonly longSidePx: number;
  readonly pxPerMm: number;
  /** In order, a circle first; none makes the picture ready for the first. */
  readonly strokes: readonly SubjectStroke[];
}

export interface SubjectResult {
  /** 1 for the subject, 0 for its ground, for every pixel of the raster, row by row. */
  readonly mask: Uint8Array;
  readonly facts: SubjectFacts;
}

/** The shapes of one wash in a picture that was read; smallest sizes in mm, px per mm on the sheet. */
export interface WashShapesRequest {
  readonly slotMap: Uint8Array;
  readonly slots: readonly Slot[];
  readonly size: PixelSize;
  readonly pxPerMm: number;
  readonly wash: MassWash;
  readonly sizes: MassSizes;
}

export interface WashShapes {
  /** A number for every pixel, row by row; connected areas of one number are one shape. */
  readonly map: Uint8Array;
  /** Whether a number of the map is painted in this wash. */
  readonly isPainted: readonly boolean[];
  readonly count: number;
}

/** The cropped reference and its greyscale (true L*), both of the raster's size. */
export interface Pictures {
  readonly reference: ImageBitmap;
  readonly grey: ImageBitmap;
}

/** part: 0..1 of the whole job. */
export type OnProgress = (part: number, stage: ProgressPhase) => void;

/** Hands over the pictures as soon as they are there, long before the reading; hers to close. */
export type OnPictures = (pictures: Pictures) => void;

export interface PhotoFacts {
  readonly width: number;
  readonly height: number;
  /** A preview of the upright photo, long side at most 1600 px. */
  readonly preview: ImageBitmap;
}

/**
 * Every job carries a number so that it can be cancelled: AbortSignal does not cross. Errors come
 * back as plain Errors whose `name` is kept: 'AbortError' for a cancelled job, 'PhotoError' with a
 * painter's sentence as message for a photo that can't be used, 'WishError' with one for wishes
 * that contradict each other.
 */
export interface AnalysisApi {
  openPhoto(job: number, photo: Blob): Promise<PhotoFacts>;
  read(
    job: number,
    request: ReadRequest,
    onPictures: OnPictures,
    onProgress: OnProgress,
  ): Promise<ReadResult>;
  plan(
    job: number,
    reading: Reading,
    wishes: PlanWishes,
    onProgress: OnProgress,
  ): Promise<WashPlan>;
  /** The palette of that plan and others to choose from; null where there is nothing to paint. */
  palettes(
    job: number,
    reading: Reading,
    wishes: PlanWishes,
    onProgress: OnProgress,
  ): Promise<PaletteOffers | null>;
  /** The subject she drew round; null where there is none, or no stroke yet. */
  subjectLine(job: number, request: SubjectRequest): Promise<SubjectResult | null>;
  washShapes(job: number, request: WashShapesRequest): Promise<WashShapes>;
  /** How the colours of a slot map run together at its soft edges. */
  softBlend(slotMap: Uint8Array, size: PixelSize, edges: readonly Edge[]): Promise<SoftBlend>;
  /** The drawing to transfer. */
  outline(reading: Reading, slotMap: Uint8Array, sizes: MassSizes): Promise<Outline>;
  /** Reference and greyscale again from the kept JPEG, for a session opened anew. */
  pictures(jpeg: ArrayBuffer): Promise<Pictures>;
  /** The built-in paints and her own. */
  paintBox(own: readonly Paint[]): Promise<PaintCard[]>;
  /** What the trade says of pigments by Colour Index name, those without a built-in paint too. */
  pigmentTable(): Promise<readonly PigmentTraits[]>;
  /** K and S of a built-in paint; null where there is none of that id. */
  opticsLike(id: string): Promise<Pick<Paint, 'K' | 'S'> | null>;
  /** Patches on a photo of a painted sheet, in her frames or found. Errors: 'PhotoError'. */
  measurePatches(
    job: number,
    photo: Blob,
    frames: readonly PatchFrame[] | null,
  ): Promise<MeasuredPhoto>;
  /** K and S of a paint from such patches; `own` are her paints. Errors: 'PhotoError'. */
  fitPaint(
    patches: readonly PaintPatch[],
    isWhite: boolean,
    own: readonly Paint[],
  ): Promise<PaintMeasure>;
  /** The mixes next to one over the dried washes below it; `paints` is the palette. */
  mixNeighbours(
    paints: readonly Paint[],
    below: readonly LaidMix[],
    mix: LaidMix,
  ): Promise<MixNeighbours>;
  /** What the paints of a palette make together. */
  mixingChart(paints: readonly Paint[]): Promise<MixingChart>;
  cancel(job: number): void;
  /** Builds tables ahead of need, for a search among the paints of this box; answers when warm. */
  warmUp(box: BoxWishes): Promise<void>;
}

// THE contract between page and worker: types only.

import type { Point } from '../app/core/colour/lab.ts';
import type { Surface } from '../app/core/colour/surface.ts';
import type { ComparedPictures } from '../app/core/compare/compare-sheet.ts';
import type { Comparison, SheetWetness } from '../app/core/compare/comparison.ts';
import type { Corners } from '../app/core/compare/homography.ts';
import type { PlanWishes } from '../app/core/decisions/plan-wishes.ts';
import type { BoxWishes } from '../app/core/decisions/wishes.ts';
import type { Outline } from '../app/core/outline/outline.ts';
import type { MeasuredPhoto, PatchFrame } from '../app/core/paint/measure/measured-photo.ts';
import type { PaintMeasure, PaintPatch } from '../app/core/paint/measure/paint-measure.ts';
import type { PageSquare, RefinedPaint } from '../app/core/paint/measure/refine-paints.ts';
import type { LaidMix, MixingChart, MixNeighbours } from '../app/core/paint/mix.ts';
import type { FormerBox, OwnBox } from '../app/core/paint/own-box.ts';
import type { Paint, PaintCard, TubePaint } from '../app/core/paint/paint.ts';
import type { ScrapLook, ScrapVerdict } from '../app/core/paint/paint-at-fault.ts';
import type { PigmentTraits } from '../app/core/paint/paint-traits.ts';
import type { StrengthCorrection } from '../app/core/paint/strength-corrections.ts';
import type { PaletteOffers } from '../app/core/palette/offers/palette-offer.ts';
import type { StandIn } from '../app/core/palette/offers/stand-ins.ts';
import type { WashPlan } from '../app/core/plan/plan.ts';
import type { SoftBlend } from '../app/core/raster/paint-slots.ts';
import type { PixelSize } from '../app/core/raster/size.ts';
import type { Edge } from '../app/core/reading/edges/edge.ts';
import type { MassSizes } from '../app/core/reading/masses.ts';
import type { ProgressPhase, Reading, ReadingWishes } from '../app/core/reading/reading.ts';
import type { WashShapes, WashShapesRequest } from '../app/core/reading/shapes/wash-masses.ts';
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

/** A photo of her sheet beside what the plan expects of it after a step. */
export interface SheetRequest {
  readonly photo: Blob;
  readonly reading: Reading;
  readonly slotMap: Uint8Array;
  /** Simplified lightness of every pixel of the reading's raster; left out: the whole is not held against the photo. */
  readonly lightnessMap?: Uint8Array;
  readonly plan: WashPlan;
  /** Number of the step that was done last. */
  readonly step: number;
  /** Hers, as shares of the photo's sides; left out: they are sought. */
  readonly corners?: Corners;
  readonly wetness: SheetWetness;
  /** Places she says are bare paper, 0..1 of the sheet or a little beyond. */
  readonly bare: readonly Point[];
}

export interface ComparedSheet {
  readonly comparison: Comparison;
  /** The upright photo, long side at most 1600 px; hers to close. */
  readonly photo: ImageBitmap;
  /** Null where nothing is judged. */
  readonly pictures: ComparedPictures | null;
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
 * The worker's vocabulary: every question the page may ask, with its answer, declared only here.
 * The page's side (`AnalysisClient`) and the worker's side (`AnalysisApi`) are derived from it.
 *
 * Errors come back as plain Errors whose `name` is kept: 'AbortError' for a cancelled job,
 * 'PhotoError' with a painter's sentence as message for a photo that can't be used, 'CropError' for a
 * crop that has not the sheet's shape, 'WishError' with
 * one for wishes that contradict each other. Functions cross as proxies, so they answer nothing.
 * `onProgress` is never optional: while a long job runs, its messages are the only sign that the
 * worker lives.
 */
export interface AnalysisCalls {
  openPhoto(photo: Blob): PhotoFacts;
  /** Size of the upright photo as it is decoded. Errors: 'PhotoError'. */
  photoSize(photo: Blob): PixelSize;
  read(request: ReadRequest, onPictures: OnPictures, onProgress: OnProgress): ReadResult;
  plan(reading: Reading, wishes: PlanWishes, onProgress: OnProgress): WashPlan;
  /** The palette of that plan and others to choose from; null where there is nothing to paint. */
  palettes(reading: Reading, wishes: PlanWishes, onProgress: OnProgress): PaletteOffers | null;
  /** Hers in place of the paints of a plan that was handed on to her. */
  standIns(theirs: readonly Paint[], hers: BoxWishes): readonly StandIn[];
  /** The subject she drew round; null where there is none, or no stroke yet. */
  subjectLine(request: SubjectRequest): SubjectResult | null;
  /** Errors: 'PhotoError'. */
  compare(request: SheetRequest, onProgress: OnProgress): ComparedSheet;
  washShapes(request: WashShapesRequest): WashShapes;
  /** How the colours of a slot map run together at its soft edges. */
  softBlend(slotMap: Uint8Array, size: PixelSize, edges: readonly Edge[]): SoftBlend;
  /** The drawing to transfer. */
  outline(reading: Reading, slotMap: Uint8Array, sizes: MassSizes): Outline;
  /** Reference and greyscale again from the kept JPEG, for a session opened anew. */
  pictures(jpeg: ArrayBuffer): Pictures;
  /** The built-in paints and her own. */
  paintBox(own: readonly Paint[]): PaintCard[];
  /** What the trade says of pigments by Colour Index name, those without a built-in paint too. */
  pigmentTable(): readonly PigmentTraits[];
  /** What mixing needs of a built-in paint; null where there is none of that id. */
  opticsLike(id: string): Pick<Paint, keyof TubePaint> | null;
  /** A box kept by an earlier version, its own paints by today's table. */
  renewBox(box: FormerBox): OwnBox;
  /** Patches on a photo of a painted sheet, in her frames (one may hold a bare black line) or found. Errors: 'PhotoError'. */
  measurePatches(
    photo: Blob,
    frames: readonly PatchFrame[] | null,
    bareLine: number | null,
  ): MeasuredPhoto;
  /** K and S of that paint from such patches; `own` are her paints. Errors: 'PhotoError'. */
  fitPaint(
    patches: readonly PaintPatch[],
    card: Pick<PaintCard, 'id' | 'ci'>,
    own: readonly Paint[],
  ): PaintMeasure;
  /** `own` paints put right by a page of mixes of them and of built-in ones. Errors: 'PhotoError'. */
  refinePaints(
    squares: readonly PageSquare[],
    own: readonly Paint[],
    builtIn: readonly string[],
  ): readonly RefinedPaint[];
  /** The mixes next to one over the dried washes below it; `paints` is the palette. */
  mixNeighbours(
    paints: readonly Paint[],
    below: readonly LaidMix[],
    mix: LaidMix,
    surface: Surface,
  ): MixNeighbours;
  /** A mix on a bare scrap, and which of its paints is at fault for what she says of it. */
  lookAtScrap(
    paints: readonly Paint[],
    mix: LaidMix,
    verdict: ScrapVerdict | null,
    made: readonly StrengthCorrection[],
    surface: Surface,
  ): ScrapLook;
  /** What the paints of a palette make together. */
  mixingChart(paints: readonly Paint[], surface: Surface): MixingChart;
  /** Builds tables ahead of need, for a search among the paints of this box; answers when warm. */
  warmUp(box: BoxWishes): void;
}

export type CallName = keyof AnalysisCalls;
export type CallArguments<Name extends CallName> = Parameters<AnalysisCalls[Name]>;
export type CallAnswer<Name extends CallName> = ReturnType<AnalysisCalls[Name]>;

/** The calls as they cross: each carries the number of its job, since an AbortSignal does not cross. */
export type JobCalls = {
  [Name in CallName]: (job: number, ...given: CallArguments<Name>) => Promise<CallAnswer<Name>>;
};

/** What the worker exposes. */
export interface AnalysisApi extends JobCalls {
  /** Marks a job as cancelled; one that is over, or answers in one go, is left alone. */
  cancel(job: number): void;
}

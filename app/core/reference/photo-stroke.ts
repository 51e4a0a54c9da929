import type { Point } from '../colour/lab.ts';
import { unclearChange } from '../words/faults.ts';
import type { Crop, Reference } from './reference.ts';

/**
 * Her stroke over the upright photo, so that it outlives another cut: places 0..1 of the photo's
 * sides; `brush` the diameter as a share of its long side, 0 for a line drawn round something.
 */
export interface PhotoStroke {
  readonly stroke: readonly Point[];
  readonly brush: number;
}

/** The same over the cut-out: 0..1 of the raster's sides, the brush a share of its long side. */
export interface CutStroke {
  /** May run out of the raster where the cut is tighter than she drew. */
  readonly path: readonly Point[];
  readonly brush: number;
}

/** More strokes than this are a slip of the program, not a painter's. */
const mostStrokes = 500;

/** Whether they can be painted: not too many, of finite places, with brushes of at most twice the long side. */
export const areSoundStrokes = (strokes: readonly CutStroke[]): boolean =>
  strokes.length <= mostStrokes &&
  strokes.every(
    ({ path, brush }) => brush >= 0 && brush <= 2 && path.flat().every(Number.isFinite),
  );

type Cut = Pick<Reference, 'crop' | 'sheet'>;

const shapeOf = ({ sheet }: Cut): number => sheet.widthMm / sheet.heightMm;

export function strokeOnPhoto(cut: Cut, { path, brush }: CutStroke): PhotoStroke {
  const shape = shapeOf(cut);
  return {
    stroke: thinStroke(path.map((point) => pointInPhoto(point, cut.crop, shape))),
    brush: brush * longSideShare(cut.crop, shape),
  };
}

export function strokeInCut(cut: Cut, { stroke, brush }: PhotoStroke): CutStroke {
  const shape = shapeOf(cut);
  return {
    path: stroke.map((point) => pointInCut(point, cut.crop, shape)),
    brush: brush / longSideShare(cut.crop, shape),
  };
}

export const placeOnPhoto = (cut: Cut, place: Point): Point =>
  thinStroke([pointInPhoto(place, cut.crop, shapeOf(cut))])[0];

export const placeInCut = (cut: Cut, place: Point): Point =>
  pointInCut(place, cut.crop, shapeOf(cut));

/** Four places: a tenth of a pixel of the working raster. */
const rounded = (share: number): number => Math.round(share * 10_000) / 10_000;

/**
 * A stroke with points nearer than `step` to the one before left out, and rounded, so that a long
 * one takes little room. Its two ends stay. All in the same 0..1 coordinates.
 */
export function thinStroke(stroke: readonly Point[], step = 0.004): Point[] {
  const kept: Point[] = [];
  stroke.forEach((point, i) => {
    const before = kept.at(-1);
    const near = before && Math.hypot(point[0] - before[0], point[1] - before[1]) < step;
    if (!near || i === stroke.length - 1) kept.push([rounded(point[0]), rounded(point[1])]);
  });
  return kept;
}

/** Photo's width and height in units of the photo's height, and the turn's cosine and sine. */
function frameOf({ size, turn }: Crop, cutShape: number) {
  const angle = (turn * Math.PI) / 180;
  return {
    width: (cutShape * size[1]) / size[0],
    cos: Math.cos(angle),
    sin: Math.sin(angle),
  };
}

/**
 * Where a place of the upright photo lies in the cut-out, 0..1 of its width and height; outside of
 * that where it was cut away. `cutShape` is the cut-out's width over its height.
 */
export function pointInCut([x, y]: Point, crop: Crop, cutShape: number): Point {
  const { width, cos, sin } = frameOf(crop, cutShape);
  const right = (x - crop.centre[0]) * width;
  const down = y - crop.centre[1];
  return [
    0.5 + (cos * right - sin * down) / (crop.size[0] * width),
    0.5 + (sin * right + cos * down) / crop.size[1],
  ];
}

/** The way back: where a place of the cut-out lies in the upright photo, 0..1. */
export function pointInPhoto([x, y]: Point, crop: Crop, cutShape: number): Point {
  const { width, cos, sin } = frameOf(crop, cutShape);
  const right = (x - 0.5) * crop.size[0] * width;
  const down = (y - 0.5) * crop.size[1];
  return [
    crop.centre[0] + (cos * right + sin * down) / width,
    crop.centre[1] + (cos * down - sin * right),
  ];
}

/** The cut-out's long side as a share of the photo's. */
export function longSideShare({ size }: Crop, cutShape: number): number {
  const width = (cutShape * size[1]) / size[0];
  return (Math.max(cutShape, 1) * size[1]) / Math.max(width, 1);
}

/**
 * How an area is painted otherwise than it is in the photo: left out, as if what surrounds it went on
 * there; or one value (Munsell, 10 L*) lighter or darker.
 */
export type Change = 'leave-out' | 'lighter' | 'darker';

/** Over the cut-out; brush 0: all that lies within the line. The photo itself is never changed. */
export interface Alteration extends CutStroke {
  readonly change: Change;
}

/** Throws a RangeError with a sentence for her where a change can't be painted. */
export function checkAlterations(alterations: readonly Alteration[]): void {
  if (!areSoundStrokes(alterations) || alterations.some(({ path }) => path.length === 0)) {
    throw new RangeError(unclearChange);
  }
}

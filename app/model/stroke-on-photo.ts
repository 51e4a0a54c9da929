import { longSideShare, pointInCut, pointInPhoto } from './cut-point.ts';
import type { Point } from './lab.ts';
import type { Reference } from './reference.ts';
import { thinStroke } from './thin-stroke.ts';

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
  thinStroke([pointInPhoto(place, cut.crop, shapeOf(cut))])[0] as Point;

export const placeInCut = (cut: Cut, place: Point): Point =>
  pointInCut(place, cut.crop, shapeOf(cut));

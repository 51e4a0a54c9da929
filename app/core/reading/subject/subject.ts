import type { Point } from '../../colour/lab.ts';
import type { CutStroke } from '../../reference/photo-stroke.ts';

/** Circling the subject starts anew; the two others correct it with a brush. */
export type SubjectMode = 'circle' | 'add' | 'take';

/** One of her strokes, over the cut-out. */
export interface SubjectStroke extends CutStroke {
  readonly mode: SubjectMode;
}

/** A stretch of the subject's line along which it stands against its ground in one way. */
export interface LineStretch {
  /** 0..1 of the raster's width and height. */
  readonly path: readonly Point[];
  /** Mean lightness of the subject's side less that of the ground's, L*. */
  readonly contrast: number;
  /** On the sheet. */
  readonly lengthMm: number;
}

/** How the subject stands against its ground. */
export interface SubjectFacts {
  /** Share of the cropped area, 0..1. */
  readonly share: number;
  /** Mean simplified lightness, L*. */
  readonly meanLightness: { readonly subject: number; readonly ground: number };
  /** Without the stretches along the picture's own border. */
  readonly line: readonly LineStretch[];
  /** Shares of the line's length, 0..1: where it differs by 10 L* or more, and by less than 4 L*. */
  readonly standsOutShare: number;
  readonly lostShare: number;
}

/** From this difference on the subject stands out, L*. */
export const standsOutFrom = 10;
/** Under this difference its line is lost, L*. */
export const lostUnder = 4;

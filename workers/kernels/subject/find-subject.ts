import type { SubjectStroke } from '../../../app/model/subject.ts';
import { cleanSubject } from './clean-subject.ts';
import { closeUp, fromCloseUp } from './close-up.ts';
import { coarseSubject } from './coarse-subject.ts';
import { colourGrid } from './colour-grid.ts';
import { refineLine } from './refine-line.ts';
import type { SubjectPlanes } from './subject-planes.ts';

/** Cells of the long side on which the line is first sought: quick, and blind to the finest grain. */
const gridLongSide = 240;

/**
 * The subject she circled: 1 for every pixel of it, 0 for its ground; null where the circle holds
 * nothing of the picture, or all of it is left. The first stroke is the circle, the others correct it in
 * order. Deterministic. Hands back control now and then.
 */
export function* findSubject(
  planes: SubjectPlanes,
  strokes: readonly SubjectStroke[],
  pxPerMm: number,
): Generator<void, Uint8Array | null> {
  const grid = colourGrid(planes, gridLongSide);
  yield;
  const coarse = yield* coarseSubject(grid, strokes);
  if (!coarse) return null;
  const near = closeUp(planes, grid, coarse.sides, strokes.slice(1));
  if (!near) return null;
  const mask = refineLine(near, coarse.favour);
  yield;
  yield* cleanSubject(mask, near.colours.size, pxPerMm, near.strokes);
  const whole = fromCloseUp(mask, near, planes.size);
  return whole.includes(1) && whole.includes(0) ? whole : null;
}

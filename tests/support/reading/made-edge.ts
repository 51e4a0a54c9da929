import type { Point } from '../../../app/core/colour/lab.ts';
import type { Edge } from '../../../app/core/reading/edges/edge.ts';

/** A hard edge between slots 0 and 1 along a path, with what a test says otherwise. */
export const madeEdge = (path: readonly Point[], otherwise: Partial<Edge> = {}): Edge => ({
  a: 0,
  b: 1,
  kind: 'hard',
  graded: false,
  heldByColour: false,
  outOfFocus: false,
  contrast: 30,
  widthMm: 0.8,
  widthShare: 0.002,
  lengthMm: 40,
  path,
  ...otherwise,
});

/** An upright one at a share of the width, from a fifth to four fifths of the height. */
export const uprightEdge = (x: number, otherwise: Partial<Edge> = {}): Edge =>
  madeEdge(
    [
      [x, 0.2],
      [x, 0.8],
    ],
    otherwise,
  );

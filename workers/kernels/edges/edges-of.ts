import type { Edge } from '../../../app/model/edge.ts';
import type { Border } from '../../../app/model/reading.ts';
import type { LinearRaster } from '../pixels/linear-raster.ts';
import { BorderSums } from './border-sums.ts';
import { edgeKindsAlong } from './edge-kinds.ts';
import { edgeOfRun } from './edge-of-run.ts';
import { edgeRuns } from './edge-runs.ts';
import { measureEdges } from './measure-edges.ts';
import { outOfFocus } from './out-of-focus.ts';
import { ownBlur } from './own-blur.ts';
import { traceContours } from './trace-contours.ts';

/** Shorter stretches are not told apart from what they belong to, mm on the sheet. */
const leastMm = 3;
/** Contours shorter than this between two corners of shapes are not listed, mm. */
const leastListedMm = 1.5;

export interface EdgesFound {
  readonly edges: Edge[];
  readonly borders: Border[];
  /** The photo's own blur that was taken off, sigma in px. */
  readonly blurPx: number;
}

/**
 * Edges between the slots of a picture, measured on its unsimplified `lightness` (L* of every pixel),
 * and their sums by pairs of slots. Deterministic. Hands back control now and then.
 */
export function* edgesOf(
  slots: Uint8Array,
  lightness: Float32Array,
  raster: LinearRaster,
  pxPerMm: number,
): Generator<void, EdgesFound> {
  const size = { width: raster.width, height: raster.height };
  const contours = yield* traceContours(slots, size);
  yield;
  const measured = yield* measureEdges(contours, slots, lightness, size);
  const blurPx = ownBlur(measured);
  const isOutOfFocus = outOfFocus(measured, size, blurPx);
  yield;
  const edges: Edge[] = [];
  const sums = new BorderSums();
  const longSidePx = Math.max(size.width, size.height);
  for (const one of measured) {
    const kinds = edgeKindsAlong(one, blurPx, longSidePx);
    const runs = edgeRuns(kinds, one.lengths, one.line.closed, leastMm * pxPerMm);
    sums.add(one, runs);
    for (const run of runs) {
      if (run.lengthPx < leastListedMm * pxPerMm) continue;
      edges.push(edgeOfRun(one, run, { raster, pxPerMm, blurPx, isOutOfFocus }));
    }
  }
  return { edges, borders: sums.borders(pxPerMm), blurPx };
}

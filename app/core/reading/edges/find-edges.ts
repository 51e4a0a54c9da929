import type { LinearRaster } from '../../raster/linear-raster.ts';
import { traceContours } from '../../raster/trace-contours.ts';
import type { Border } from '../reading.ts';
import type { Edge, EdgeKind } from './edge.ts';
import { describeEdge, type EdgeRun, edgeRuns } from './edge-runs.ts';
import { classifyAlong, findOutOfFocus, measureCameraBlur } from './judge-edges.ts';
import { type MeasuredContour, measureEdges } from './measure-edges.ts';

/** Shorter stretches are not told apart from what they belong to, mm on the sheet. */
const leastMm = 3;
/** Contours shorter than this between two corners of shapes are not listed, mm. */
const leastListedMm = 1.5;

interface EdgesFound {
  readonly edges: Edge[];
  readonly borders: Border[];
  /** The photo's own blur that was taken off, sigma in px. */
  readonly blurPx: number;
}

/**
 * Edges between the slots of a picture, measured on its unsimplified `lightness` (L* of every pixel),
 * and their sums by pairs of slots. Deterministic. Hands back control now and then.
 */
export function* findEdges(
  slots: Uint8Array,
  lightness: Float32Array,
  raster: LinearRaster,
  pxPerMm: number,
): Generator<void, EdgesFound> {
  const size = { width: raster.width, height: raster.height };
  const contours = yield* traceContours(slots, size);
  yield;
  const measured = yield* measureEdges(contours, slots, lightness, size);
  const blurPx = measureCameraBlur(measured);
  const isOutOfFocus = findOutOfFocus(measured, size, blurPx);
  yield;
  const edges: Edge[] = [];
  const sums = new BorderSums();
  const longSidePx = Math.max(size.width, size.height);
  for (const one of measured) {
    const kinds = classifyAlong(one, blurPx, longSidePx);
    const runs = edgeRuns(kinds, one.lengths, one.line.closed, leastMm * pxPerMm);
    sums.add(one, runs);
    for (const run of runs) {
      if (run.lengthPx < leastListedMm * pxPerMm) continue;
      edges.push(describeEdge(one, run, { raster, pxPerMm, blurPx, isOutOfFocus }));
    }
  }
  return { edges, borders: sums.borders(pxPerMm), blurPx };
}

interface Sum {
  lengthPx: number;
  contrast: number;
  soft: number;
  lost: number;
}

/** Edges summed up by the two slots they part. */
class BorderSums {
  readonly #sums = new Map<number, Sum>();

  add({ contour, contrasts, lengths }: MeasuredContour, runs: readonly EdgeRun[]): void {
    const pair = contour.a * 256 + contour.b;
    const sum = this.#sums.get(pair) ?? { lengthPx: 0, contrast: 0, soft: 0, lost: 0 };
    for (let n = 0; n < lengths.length; n++) {
      const length = lengths[n];
      sum.lengthPx += length;
      sum.contrast += length * contrasts[n];
    }
    const ofKind = (kind: EdgeKind): number =>
      runs.reduce((all, run) => (run.kind === kind ? all + run.lengthPx : all), 0);
    sum.soft += ofKind('soft');
    sum.lost += ofKind('lost');
    this.#sums.set(pair, sum);
  }

  /** By the lower, then the other slot. */
  borders(pxPerMm: number): Border[] {
    return [...this.#sums]
      .sort(([one], [other]) => one - other)
      .map(([pair, { lengthPx, contrast, soft, lost }]) => ({
        a: pair >> 8,
        b: pair & 255,
        lengthMm: lengthPx / pxPerMm,
        contrast: contrast / lengthPx,
        soft: Math.min(1, soft / lengthPx),
        lost: Math.min(1, lost / lengthPx),
      }));
  }
}

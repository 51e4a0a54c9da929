import { runToEnd } from '../../../app/core/numeric/run-to-end.ts';
import type { PixelSize } from '../../../app/core/raster/size.ts';
import { contourLine } from '../../../app/core/raster/smooth-line.ts';
import { traceContours } from '../../../app/core/raster/trace-contours.ts';
import type { Edge } from '../../../app/core/reading/edges/edge.ts';
import { madeEdge } from '../reading/made-edge.ts';

/** Every contour of a slot map as one hard edge, followed as the reading follows it. */
export function tracedEdges(map: Uint8Array, size: PixelSize): Edge[] {
  return runToEnd(traceContours(map, size)).map((contour) => {
    const { x, y, closed, count } = contourLine(contour);
    const path = Array.from({ length: closed ? count + 1 : count }, (_, i) => {
      const at = i % count;
      return [(x[at] ?? 0) / size.width, (y[at] ?? 0) / size.height] as const;
    });
    return madeEdge(path, { a: contour.a, b: contour.b });
  });
}

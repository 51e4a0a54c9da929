import { expect, test } from 'vitest';
import { runToEnd } from '../../../../../app/core/numeric/run-to-end.ts';
import { traceContours } from '../../../../../app/core/raster/trace-contours.ts';
import { measureEdges } from '../../../../../app/core/reading/edges/measure-edges.ts';

/** How often it hands back control over so many lines right across a picture of that width. */
function pausesOf(lines: number, width: number): number {
  const size = { width, height: lines + 1 };
  const slots = Uint8Array.from({ length: width * size.height }, (_, i) => Math.floor(i / width));
  const contours = runToEnd(traceContours(slots, size));
  expect(contours).toHaveLength(lines);
  const pieces = measureEdges(contours, slots, new Float32Array(slots.length), size);
  let pauses = 0;
  while (!pieces.next().done) pauses++;
  return pauses;
}

// A line across 3999 px has 4000 corners: two lines are 8000 places, after which it pauses.
test.each([
  [1, 3999, 0],
  [2, 3999, 1],
  [3, 3999, 1],
  [4, 3999, 2],
  [2, 3998, 0],
  [1, 7999, 1],
])('over %i lines of %i px it pauses %i times', (lines, width, pauses) => {
  expect(pausesOf(lines, width)).toBe(pauses);
});

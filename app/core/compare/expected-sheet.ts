import { tableOf } from '../colour/lab.ts';
import type { Step } from '../plan/plan.ts';
import { paintMarks, scaledMarks } from '../raster/paint-marks.ts';
import { paintSoft, type SoftBlend } from '../raster/paint-slots.ts';
import { paintSquares, scaledGrid } from '../raster/paint-squares.ts';
import type { PixelSize } from '../raster/size.ts';
import type { Reading } from '../reading/reading.ts';

/**
 * The sheet as a plan expects it after a step: RGBA bytes of that size, opaque. The slot map is of that size, and so
 * is the blend, which says how its colours run together at soft edges. Slots run where the reading says how.
 */
export function drawExpectedSheet(
  { raster, squares, details }: Pick<Reading, 'raster' | 'squares' | 'details'>,
  slotMap: Uint8Array,
  blend: SoftBlend,
  size: PixelSize,
  { after, look, marks = [] }: Pick<Step, 'after' | 'look' | 'marks'>,
): Uint8ClampedArray<ArrayBuffer> {
  const scale = size.width / raster.width;
  const rgba = new Uint8ClampedArray(size.width * size.height * 4);
  if (squares && look) paintSquares(slotMap, size, scaledGrid(squares, scale), look, blend, rgba);
  else paintSoft(slotMap, blend, tableOf(after), rgba);
  if (details) paintMarks(scaledMarks(details, scale), marks, size, rgba);
  return rgba;
}

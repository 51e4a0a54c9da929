import { washMasses } from '../app/core/reading/shapes/wash-masses.ts';
import type { WashShapes, WashShapesRequest } from './api.ts';

/** The shapes of one wash. `pause` is awaited between pieces and may throw to stop. */
export async function washShapes(
  { slotMap, slots, size, pxPerMm, wash, sizes }: WashShapesRequest,
  pause: () => Promise<void>,
): Promise<WashShapes> {
  const pieces = washMasses(slotMap, slots, size, pxPerMm, wash, sizes);
  for (;;) {
    const piece = pieces.next();
    await pause();
    if (piece.done) return piece.value;
  }
}

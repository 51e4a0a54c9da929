import type { WashShapes, WashShapesRequest } from './analysis-api.ts';
import { washMasses } from './kernels/shapes/masses-of.ts';

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

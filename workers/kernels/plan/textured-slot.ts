import type { Slot } from '../../../app/model/slot.ts';

/** Own figures: broken up enough that spots and dry strokes look at home. */
const textured = { small: 40, share: 0.6, largest: 0.1 } as const;

/** Many small shapes and no large plain one. */
export const isTextured = (
  { smallShapes, shapes, largestMm2 }: Pick<Slot, 'smallShapes' | 'shapes' | 'largestMm2'>,
  sheetMm2: number,
): boolean =>
  smallShapes >= textured.small &&
  smallShapes >= textured.share * shapes &&
  largestMm2 < textured.largest * sheetMm2;

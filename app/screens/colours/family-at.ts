import type { Point } from '../../model/lab.ts';
import type { Seen } from '../../state/seen.ts';

/** The colour family at a place, 0..1 of the picture's sides; null outside of the reading. */
export function familyAt({ reading, slotMap }: Seen, [x, y]: Point): number | null {
  const { width, height } = reading.raster;
  const column = Math.min(width - 1, Math.floor(x * width));
  const row = Math.min(height - 1, Math.floor(y * height));
  const slot = slotMap[row * width + column];
  return slot === undefined ? null : (reading.slots[slot]?.family ?? null);
}

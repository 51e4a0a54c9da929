import type { Alteration } from '../../../app/model/alteration.ts';
import type { PixelSize } from '../../../app/model/pixel-size.ts';
import type { LinearRaster } from '../pixels/linear-raster.ts';
import { checkAlterations } from './check-alterations.ts';
import { leaveOut } from './leave-out.ts';
import { shiftLightness } from './shift-lightness.ts';
import { strokeCover } from './stroke-cover.ts';

/** One Munsell value, L* (value 10 is L* 100; own rounding of ASTM D1535). */
const oneValue = 10;

function addArea(to: Uint8Array, area: Uint8Array): void {
  for (let i = 0; i < to.length; i++) if (area[i] === 1) to[i] = 1;
}

function touch(one: Uint8Array, other: Uint8Array): boolean {
  for (let i = 0; i < one.length; i++) if (one[i] === 1 && other[i] === 1) return true;
  return false;
}

/**
 * Paints over the working raster, in place and in order, what she wants otherwise than in the photo;
 * without alterations nothing is touched. What is left out is filled together, as late as what is laid
 * over it allows: a thing taken out in several strokes leaves nothing of itself between them. Throws a
 * RangeError for strokes that are none.
 */
export function* alterRaster(
  raster: LinearRaster,
  alterations: readonly Alteration[],
  pxPerMm: number,
): Generator<void, void> {
  checkAlterations(alterations);
  const size: PixelSize = { width: raster.width, height: raster.height };
  let waiting: Uint8Array | null = null;
  for (const alteration of alterations) {
    const area = strokeCover(alteration, size);
    yield;
    if (alteration.change === 'leave-out') {
      if (waiting) addArea(waiting, area);
      else waiting = area;
      continue;
    }
    if (waiting && touch(waiting, area)) {
      yield* leaveOut(raster, waiting, pxPerMm);
      waiting = null;
    }
    const by = alteration.change === 'lighter' ? oneValue : -oneValue;
    yield* shiftLightness(raster, area, by, pxPerMm);
  }
  if (waiting) yield* leaveOut(raster, waiting, pxPerMm);
}

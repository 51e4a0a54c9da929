import type { PixelSize } from '../../../app/model/pixel-size.ts';
import type { LinearRaster } from '../pixels/linear-raster.ts';
import { areaBox, type Box, cutOut } from './area-box.ts';
import { edgeDistance } from './edge-distance.ts';
import { fillSmoothly } from './fill-smoothly.ts';
import { onSheetPx } from './on-sheet-px.ts';

/** A thing's border is blurred and her hand unsteady: so much more is left out, mm on the sheet. */
const moreMm = 1;

/** 1 where a pixel lies outside of the area and farther than `more` px from it. */
function farFrom(inside: Uint8Array, distance: Float32Array, more: number): Uint8Array {
  const far = new Uint8Array(inside.length);
  for (let i = 0; i < far.length; i++) {
    far[i] = inside[i] === 0 && (distance[i] as number) > more ? 1 : 0;
  }
  return far;
}

function putBack(
  into: Float32Array,
  width: number,
  box: Box,
  filled: Float32Array,
  known: Uint8Array,
): void {
  for (let y = 0, i = 0; y < box.height; y++) {
    const row = (box.top + y) * width + box.left;
    for (let x = 0; x < box.width; x++, i++) {
      // Over-relaxed values may stray past the ends by a hair.
      if (known[i] === 0) into[row + x] = Math.max(0, Math.min(1, filled[i] as number));
    }
  }
}

/**
 * Fills an area (1 in `area`) of the raster, in place, as if what surrounds it went on there, in linear
 * light. A whole picture has nothing round it and stays as it is.
 */
export function* leaveOut(
  raster: LinearRaster,
  area: Uint8Array,
  pxPerMm: number,
): Generator<void, void> {
  const size: PixelSize = { width: raster.width, height: raster.height };
  const more = onSheetPx(moreMm, pxPerMm, Math.max(size.width, size.height));
  const margin = Math.ceil(more) + 1;
  const box = areaBox(area, size, margin);
  if (!box) return;
  const cells = box.width * box.height;
  const inside = cutOut(area, size.width, box, new Uint8Array(cells));
  const distance = edgeDistance(inside, box, more + 0.5);
  const known = farFrom(inside, distance, more);
  if (!known.includes(1)) return;
  yield;
  const whole = [raster.red, raster.green, raster.blue];
  const planes = whole.map((plane) => cutOut(plane, size.width, box, new Float32Array(cells)));
  yield* fillSmoothly({ ...box, known, planes });
  yield;
  planes.forEach((plane, p) => {
    putBack(whole[p] as Float32Array, size.width, box, plane, known);
  });
}

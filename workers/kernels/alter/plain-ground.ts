import type { PixelSize } from '../../../app/model/reference.ts';
import type { LabPlanes } from '../pixels/lab-planes.ts';
import type { LinearRaster } from '../pixels/linear-raster.ts';
import { edgeDistance } from './edge-distance.ts';
import { layLab } from './lay-lab.ts';
import { onSheetPx } from './on-sheet-px.ts';
import { plainWash } from './plain-wash.ts';
import { smoothStep } from './smooth-step.ts';

/** From the subject's line on the wash sets in over this, mm on the sheet. */
const setsInMm = 1;

/**
 * Makes the ground (0 in `mask`) one plain, gently graded wash: in the simplified planes in place, and
 * in a copy of the raster, which it answers. The subject's own pixels are left alone.
 */
export function* plainGround(
  planes: LabPlanes,
  raster: LinearRaster,
  mask: Uint8Array,
  pxPerMm: number,
): Generator<void, LinearRaster> {
  const size: PixelSize = { width: raster.width, height: raster.height };
  const lightness = plainWash(planes.lightness, mask, size);
  const a = plainWash(planes.a, mask, size);
  const b = plainWash(planes.b, mask, size);
  yield;
  const setsIn = onSheetPx(setsInMm, pxPerMm, Math.max(size.width, size.height));
  const distance = edgeDistance(mask, size, setsIn);
  yield;
  const { red, green, blue } = raster;
  const copy = { ...size, red: red.slice(), green: green.slice(), blue: blue.slice() };
  yield;
  const mix = (plane: Float32Array, i: number, to: number, share: number): void => {
    const was = plane[i] as number;
    plane[i] = was + share * (to - was);
  };
  for (let y = 0, i = 0; y < size.height; y++) {
    if (y % 300 === 299) yield;
    for (let x = 0; x < size.width; x++, i++) {
      if (mask[i] === 1) continue;
      const share = smoothStep((distance[i] as number) / setsIn);
      const l = lightness.start + x * lightness.across + y * lightness.down;
      const held = Math.max(0, Math.min(100, l));
      const atA = a.start + x * a.across + y * a.down;
      const atB = b.start + x * b.across + y * b.down;
      mix(planes.lightness, i, held, share);
      mix(planes.a, i, atA, share);
      mix(planes.b, i, atB, share);
      layLab(copy, i, [held, atA, atB], share);
    }
  }
  return copy;
}

import type { Lab } from '../../../app/model/lab.ts';
import type { PixelSize } from '../../../app/model/pixel-size.ts';
import type { LabPlanes } from '../pixels/lab-planes.ts';
import type { LinearRaster } from '../pixels/linear-raster.ts';
import { edgeDistance } from './edge-distance.ts';
import { linearOfLab } from './linear-of-lab.ts';
import { onSheetPx } from './on-sheet-px.ts';
import { plainLevel } from './plain-level.ts';
import { smoothStep } from './smooth-step.ts';

/** From the subject's line on the wash sets in over this, mm on the sheet. */
const setsInMm = 1;
interface Ground {
  /** 0 where it lies. */
  readonly mask: Uint8Array;
  /** From the subject's line, px. */
  readonly distance: Float32Array;
  readonly setsIn: number;
}

/** A loop of its own: within a generator it would run many times slower (V8). */
function lay(plane: Float32Array, level: number, { mask, distance, setsIn }: Ground): void {
  for (let i = 0; i < plane.length; i++) {
    if (mask[i] === 1) continue;
    const was = plane[i] as number;
    plane[i] = was + smoothStep((distance[i] as number) / setsIn) * (level - was);
  }
}

/**
 * Makes the ground (0 in `mask`) one plain wash: in the simplified planes in place, and in a copy of the
 * raster, which it answers. The subject's own pixels are left alone. Flat, for a wash that runs from
 * light to dark would be cut in two by a limit between values.
 */
export function* plainGround(
  planes: LabPlanes,
  raster: LinearRaster,
  mask: Uint8Array,
  pxPerMm: number,
): Generator<void, LinearRaster> {
  const size: PixelSize = { width: raster.width, height: raster.height };
  const level = plainLevel(planes.lightness, mask);
  const colour: Lab = [level, plainLevel(planes.a, mask), plainLevel(planes.b, mask)];
  yield;
  const setsIn = onSheetPx(setsInMm, pxPerMm, Math.max(size.width, size.height));
  const distance = edgeDistance(mask, size, setsIn);
  yield;
  const ground = { mask, distance, setsIn };
  lay(planes.lightness, colour[0], ground);
  lay(planes.a, colour[1], ground);
  lay(planes.b, colour[2], ground);
  yield;
  const [red, green, blue] = linearOfLab(colour);
  const copy = {
    ...size,
    red: raster.red.slice(),
    green: raster.green.slice(),
    blue: raster.blue.slice(),
  };
  yield;
  lay(copy.red, red, ground);
  lay(copy.green, green, ground);
  lay(copy.blue, blue, ground);
  return copy;
}

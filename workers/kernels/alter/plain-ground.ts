import type { Lab } from '../../../app/model/lab.ts';
import type { PixelSize } from '../../../app/model/reference.ts';
import type { LabPlanes } from '../pixels/lab-planes.ts';
import type { LinearRaster } from '../pixels/linear-raster.ts';
import { edgeDistance } from './edge-distance.ts';
import { layLab } from './lay-lab.ts';
import { onSheetPx } from './on-sheet-px.ts';
import { plainLevel } from './plain-level.ts';
import { smoothStep } from './smooth-step.ts';

/** From the subject's line on the wash sets in over this, mm on the sheet. */
const setsInMm = 1;
/** Rows between two pauses: some milliseconds. */
const rowsAtOnce = 200;

interface GroundWash {
  /** 0 where the ground lies. */
  readonly mask: Uint8Array;
  /** From the subject's line, px. */
  readonly distance: Float32Array;
  readonly setsIn: number;
  readonly colour: Lab;
}

/** A loop of its own: within a generator it would run many times slower (V8). */
function layRows(
  planes: LabPlanes,
  raster: LinearRaster,
  { mask, distance, setsIn, colour }: GroundWash,
  [from, to]: readonly [from: number, to: number],
): void {
  const [lightness, a, b] = colour;
  for (let i = from * raster.width; i < to * raster.width; i++) {
    if (mask[i] === 1) continue;
    const share = smoothStep((distance[i] as number) / setsIn);
    planes.lightness[i] = mixed(planes.lightness[i] as number, lightness, share);
    planes.a[i] = mixed(planes.a[i] as number, a, share);
    planes.b[i] = mixed(planes.b[i] as number, b, share);
    layLab(raster, i, lightness, a, b, share);
  }
}

const mixed = (was: number, laid: number, share: number): number => was + share * (laid - was);

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
  const { red, green, blue } = raster;
  const copy = { ...size, red: red.slice(), green: green.slice(), blue: blue.slice() };
  yield;
  const wash = { mask, distance, setsIn, colour };
  for (let row = 0; row < size.height; row += rowsAtOnce) {
    layRows(planes, copy, wash, [row, Math.min(size.height, row + rowsAtOnce)]);
    yield;
  }
  return copy;
}

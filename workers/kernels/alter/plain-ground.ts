import type { PixelSize } from '../../../app/model/reference.ts';
import type { LabPlanes } from '../pixels/lab-planes.ts';
import type { LinearRaster } from '../pixels/linear-raster.ts';
import { edgeDistance } from './edge-distance.ts';
import { layLab } from './lay-lab.ts';
import { onSheetPx } from './on-sheet-px.ts';
import { type PlainWash, plainWash } from './plain-wash.ts';
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
  readonly lightness: PlainWash;
  readonly a: PlainWash;
  readonly b: PlainWash;
}

const washAt = ({ start, across, down }: PlainWash, x: number, y: number): number =>
  start + x * across + y * down;

/** A loop of its own: within a generator it would run many times slower (V8). */
function layRows(
  planes: LabPlanes,
  raster: LinearRaster,
  wash: GroundWash,
  [from, to]: readonly [from: number, to: number],
): void {
  for (let y = from, i = from * raster.width; y < to; y++) {
    for (let x = 0; x < raster.width; x++, i++) {
      if (wash.mask[i] === 1) continue;
      const share = smoothStep((wash.distance[i] as number) / wash.setsIn);
      const lightness = Math.max(0, Math.min(100, washAt(wash.lightness, x, y)));
      const a = washAt(wash.a, x, y);
      const b = washAt(wash.b, x, y);
      planes.lightness[i] = mixed(planes.lightness[i] as number, lightness, share);
      planes.a[i] = mixed(planes.a[i] as number, a, share);
      planes.b[i] = mixed(planes.b[i] as number, b, share);
      layLab(raster, i, lightness, a, b, share);
    }
  }
}

const mixed = (was: number, laid: number, share: number): number => was + share * (laid - was);

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
  const wash = { mask, distance, setsIn, lightness, a, b };
  for (let row = 0; row < size.height; row += rowsAtOnce) {
    layRows(planes, copy, wash, [row, Math.min(size.height, row + rowsAtOnce)]);
    yield;
  }
  return copy;
}

import { type Lab, linearOfLab } from '../../colour/lab.ts';
import { luminanceOfLightness } from '../../colour/lightness.ts';
import { distanceToOutline, smoothStep } from '../../raster/distance-map.ts';
import type { LabPlanes, LinearRaster } from '../../raster/linear-raster.ts';
import { onSheetPx, type PixelSize } from '../../raster/size.ts';

/** Width of the band along the subject's line over which the wash sets in, mm on the sheet. */
const setsInMm = 1;

/** Where the plain wash lies. */
interface PlainWash {
  /** 0 on the subject's ground, where it lies. */
  readonly mask: Uint8Array;
  /** Of every pixel from the subject's line, px. */
  readonly distance: Float32Array;
  readonly setsIn: number;
}

/** A loop of its own: within a generator it would run many times slower (V8). */
function lay(plane: Float32Array, level: number, { mask, distance, setsIn }: PlainWash): void {
  for (let i = 0; i < plane.length; i++) {
    if (mask[i] === 1) continue;
    const was = plane[i];
    plane[i] = was + smoothStep(distance[i] / setsIn) * (level - was);
  }
}

/**
 * Makes the ground (0 in `mask`) one plain wash: in the simplified planes in place, and in a copy of the
 * raster, which it answers. The subject's own pixels are left alone. The wash is flat, because a limit
 * between values would cut one that runs from light to dark in two.
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
  const distance = distanceToOutline(mask, size, setsIn);
  yield;
  const ground = { mask, distance, setsIn };
  lay(planes.lightness, colour[0], ground);
  lay(planes.a, colour[1], ground);
  lay(planes.b, colour[2], ground);
  yield;
  const [red, green, blue] = fitToSrgb(colour);
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

/** About so many pixels are looked at. */
const samples = 40_000;
const rounds = 10;
/** Farther from the level than this a pixel counts less, L* or the same of a*, b*. */
const near = 4;

/**
 * The level of a plane where `mask` is 0, by Huber's weights ('Robust Estimation of a Location
 * Parameter', 1964): a few leaves or lights in the ground pull it little. 0 without any ground.
 */
export function plainLevel(plane: Float32Array, mask: Uint8Array): number {
  // Coprime with the usual widths, so that the places looked at are spread over all columns.
  const step = Math.max(1, Math.floor(plane.length / samples) | 1);
  let level = 0;
  for (let round = 0; round < rounds; round++) {
    let sum = 0;
    let weights = 0;
    for (let i = step >> 1; i < plane.length; i += step) {
      if (mask[i] !== 0) continue;
      const value = plane[i];
      const off = round === 0 ? 0 : Math.abs(value - level);
      const weight = off <= near ? 1 : near / off;
      sum += weight * value;
      weights += weight;
    }
    if (weights === 0) return level;
    level = sum / weights;
  }
  return level;
}

/** Linear light 0..1 of a colour; one a screen can't show is drawn to grey of the same lightness. */
function fitToSrgb(lab: Lab): readonly [number, number, number] {
  const [red, green, blue] = linearOfLab(lab);
  const y = luminanceOfLightness(lab[0]);
  const r = red - y;
  const g = green - y;
  const b = blue - y;
  const over = Math.max(r, g, b);
  const under = -Math.min(r, g, b);
  let colour = 1;
  if (over > 1 - y) colour = Math.min(colour, (1 - y) / over);
  if (under > y) colour = Math.min(colour, y / under);
  const held = (own: number): number => Math.max(0, Math.min(1, y + colour * own));
  return [held(r), held(g), held(b)];
}

import type { Lab } from '../../colour/lab.ts';
import { distanceToOutline, smoothStep } from '../../raster/distance-map.ts';
import { type LabPlanes, type LinearRaster, luminanceOf } from '../../raster/linear-raster.ts';
import { onSheetPx, type PixelSize } from '../../raster/size.ts';

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
    const was = plane[i];
    plane[i] = was + smoothStep(distance[i] / setsIn) * (level - was);
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
  const distance = distanceToOutline(mask, size, setsIn);
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

// XYZ to linear sRGB, and the white of the same primaries: CSS Color 4, 10.1 (D65 of x 0.3127, y 0.3290).
const redOf = [3.2409699419045226, -1.537383177570094, -0.4986107602930034] as const;
const greenOf = [-0.9692436362808796, 1.8759675015077202, 0.0415550574071756] as const;
const blueOf = [0.0556300796969936, -0.2039769588889765, 1.0569715142428786] as const;
const whiteX = 0.3127 / 0.329;
const whiteZ = (1 - 0.3127 - 0.329) / 0.329;

const joint = 6 / 29;
const undone = (f: number): number => (f > joint ? f * f * f : 3 * joint * joint * (f - 4 / 29));

/**
 * Linear light 0..1 of a colour (L* 0..100, a*, b*; ISO/CIE 11664-4). Colours a screen can't hold are
 * drawn to grey of the same lightness.
 */
function linearOfLab([lightness, a, b]: Lab): readonly [number, number, number] {
  const fy = (lightness + 16) / 116;
  const x = whiteX * undone(fy + a / 500);
  const y = luminanceOf(lightness);
  const z = whiteZ * undone(fy - b / 200);
  const r = redOf[0] * x + redOf[1] * y + redOf[2] * z - y;
  const g = greenOf[0] * x + greenOf[1] * y + greenOf[2] * z - y;
  const c = blueOf[0] * x + blueOf[1] * y + blueOf[2] * z - y;
  const over = Math.max(r, g, c);
  const under = -Math.min(r, g, c);
  let colour = 1;
  if (over > 1 - y) colour = Math.min(colour, (1 - y) / over);
  if (under > y) colour = Math.min(colour, y / under);
  const held = (own: number): number => Math.max(0, Math.min(1, y + colour * own));
  return [held(r), held(g), held(c)];
}

import { cieCurveFast } from './cie-curve.ts';
import type { LinearRaster } from './linear-raster.ts';

/** Shares of the linear channels in luminance: the Y row of the sRGB primaries, D65 (CSS Color 4). */
export const redShare = 0.2126390058715103;
export const greenShare = 0.7151686787677559;
export const blueShare = 0.07219231536073371;

// Read once, for the loop.
const curve = cieCurveFast;

/** CIE L* 0..100 of linear light 0..1, within 0.001. Source: IEC 61966-2-1, CIE 15. */
export function lightnessOfLinear(red: number, green: number, blue: number): number {
  return 116 * curve(redShare * red + greenShare * green + blueShare * blue) - 16;
}

/** L* of every pixel of the raster, row by row. */
export function lightnessPlane(raster: LinearRaster): Float32Array {
  const { red, green, blue } = raster;
  const plane = new Float32Array(red.length);
  for (let i = 0; i < plane.length; i++) {
    plane[i] = lightnessOfLinear(red[i] as number, green[i] as number, blue[i] as number);
  }
  return plane;
}

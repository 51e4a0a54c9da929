import { cieCurveFast } from './cie-curve.ts';
import { blueShare, greenShare, redShare } from './lightness.ts';
import type { LinearRaster } from './linear-raster.ts';

// X and Z rows of the sRGB primaries divided by their sums, so that a grey has a* = b* = 0.
// Source: CSS Color 4, 10.1 (D65 of x 0.3127, y 0.3290).
const xRow = [0.41239079926595934, 0.357584339383878, 0.1804807884018343] as const;
const zRow = [0.01933081871559182, 0.11919477979462598, 0.9505321522496607] as const;
const xSum = xRow[0] + xRow[1] + xRow[2];
const zSum = zRow[0] + zRow[1] + zRow[2];
const [xr, xg, xb] = [xRow[0] / xSum, xRow[1] / xSum, xRow[2] / xSum];
const [zr, zg, zb] = [zRow[0] / zSum, zRow[1] / zSum, zRow[2] / zSum];

// Read once, for the loop: some ways to load a file look imports up each time.
const curve = cieCurveFast;
const [yr, yg, yb] = [redShare, greenShare, blueShare];

/** Three planes of one size: L* 0..100, a*, b* (D65 / 2 degree, ISO/CIE 11664-4). */
export interface LabPlanes {
  readonly lightness: Float32Array;
  readonly a: Float32Array;
  readonly b: Float32Array;
}

/** Turns the raster's planes into L*, a*, b* in place: the raster is used up. */
export function labInPlace(raster: LinearRaster): LabPlanes {
  const { red, green, blue } = raster;
  for (let i = 0; i < red.length; i++) {
    const r = red[i] as number;
    const g = green[i] as number;
    const b = blue[i] as number;
    const x = curve(xr * r + xg * g + xb * b);
    const y = curve(yr * r + yg * g + yb * b);
    const z = curve(zr * r + zg * g + zb * b);
    red[i] = 116 * y - 16;
    green[i] = 500 * (x - y);
    blue[i] = 200 * (y - z);
  }
  return { lightness: red, a: green, b: blue };
}

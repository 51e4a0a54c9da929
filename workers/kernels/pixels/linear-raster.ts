import { lightnessOfLinear } from './lightness.ts';
/**
 * The working raster: three planes of linear light 0..1 (IEC 61966-2-1 primaries, D65), row by row,
 * each of width * height.
 */
export interface LinearRaster {
  readonly width: number;
  readonly height: number;
  readonly red: Float32Array;
  readonly green: Float32Array;
  readonly blue: Float32Array;
}

/** Share of the source's pixels, 0..1, whose three channels are all at the end of the scale. */
export interface ClippedShares {
  readonly light: number;
  readonly dark: number;
}

/** A black raster of that size. */
export function emptyRaster(width: number, height: number): LinearRaster {
  const plane = (): Float32Array => new Float32Array(width * height);
  return { width, height, red: plane(), green: plane(), blue: plane() };
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

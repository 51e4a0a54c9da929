import { type LinearRaster, lightnessPlane } from '../../../app/core/raster/linear-raster.ts';

export function lightnessAt(raster: LinearRaster, x: number, y: number): number {
  const column = Math.floor(x * raster.width);
  const row = Math.floor(y * raster.height);
  return lightnessPlane(raster)[row * raster.width + column] as number;
}

/** L* in the middle of the four quarters: left and right above, left and right below. */
export const quarters = (raster: LinearRaster): number[] =>
  [
    [0.3, 0.3],
    [0.75, 0.25],
    [0.25, 0.75],
    [0.75, 0.75],
  ].map(([x = 0, y = 0]) => lightnessAt(raster, x, y));

export const meanLightness = (raster: LinearRaster): number => {
  const plane = lightnessPlane(raster);
  return plane.reduce((sum, lightness) => sum + lightness, 0) / plane.length;
};

import type { Lab, Point } from '../../../app/core/colour/lab.ts';
import type { LinearRaster } from '../../../app/core/raster/linear-raster.ts';
import { linearOfLab } from './linear-of-lab.ts';

/** A raster by L*, a*, b* at every pixel. */
export function rasterOf(
  width: number,
  height: number,
  labAt: (x: number, y: number) => Lab,
): LinearRaster {
  const raster = {
    width,
    height,
    red: new Float32Array(width * height),
    green: new Float32Array(width * height),
    blue: new Float32Array(width * height),
  };
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const [red, green, blue] = linearOfLab(labAt(x, y));
      raster.red[i] = red;
      raster.green[i] = green;
      raster.blue[i] = blue;
    }
  }
  return raster;
}

export const copyOf = (raster: LinearRaster): LinearRaster => ({
  ...raster,
  red: raster.red.slice(),
  green: raster.green.slice(),
  blue: raster.blue.slice(),
});

/** A closed line round a place, 0..1 of the sides. */
export const oval = ([x, y]: Point, halfX: number, halfY: number): Point[] =>
  Array.from({ length: 64 }, (_, i) => {
    const angle = (2 * Math.PI * i) / 64;
    return [x + halfX * Math.cos(angle), y + halfY * Math.sin(angle)];
  });

/** Whether two rasters are the same to the last bit, at the pixels asked for. */
export function sameRaster(
  one: LinearRaster,
  other: LinearRaster,
  asked: (x: number, y: number) => boolean = () => true,
): boolean {
  for (let i = 0; i < one.red.length; i++) {
    if (!asked(i % one.width, Math.floor(i / one.width))) continue;
    if (one.red[i] !== other.red[i] || one.green[i] !== other.green[i]) return false;
    if (one.blue[i] !== other.blue[i]) return false;
  }
  return true;
}

import { emptyRaster, type LinearRaster } from './linear-raster.ts';
import { rasterSize } from './size.ts';

/** A raster averaged to a smaller long side; itself where it is no larger. */
export function reducedRaster(raster: LinearRaster, longSidePx: number): LinearRaster {
  const size = rasterSize(raster.width, raster.height, longSidePx);
  const out = emptyRaster(size.width, size.height);
  const { width, height } = raster;
  for (const [from, to] of [
    [raster.red, out.red],
    [raster.green, out.green],
    [raster.blue, out.blue],
  ])
    for (let y = 0; y < size.height; y++) {
      const [top, bottom] = [
        Math.floor((y * height) / size.height),
        Math.max(1, Math.floor(((y + 1) * height) / size.height)),
      ];
      for (let x = 0; x < size.width; x++) {
        const [left, right] = [
          Math.floor((x * width) / size.width),
          Math.floor(((x + 1) * width) / size.width),
        ];
        let sum = 0;
        for (let v = top; v < bottom; v++)
          for (let i = v * width + left; i < v * width + right; i++) sum += from[i];
        to[y * size.width + x] = sum / ((bottom - top) * (right - left));
      }
    }
  return out;
}

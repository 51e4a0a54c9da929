import { emptyRaster, type LinearRaster } from '../pixels/linear-raster.ts';

/** The raster by whole blocks of pixels, each block its mean; a rest at the right and below is left out. */
export function smallRaster(raster: LinearRaster, block: number): LinearRaster {
  const width = Math.max(1, Math.floor(raster.width / block));
  const height = Math.max(1, Math.floor(raster.height / block));
  const small = emptyRaster(width, height);
  for (const name of ['red', 'green', 'blue'] as const) {
    const from = raster[name];
    const to = small[name];
    for (let y = 0; y < height; y++) {
      for (let x = 0; x < width; x++) {
        let sum = 0;
        for (let row = 0; row < block; row++) {
          const start = (y * block + row) * raster.width + x * block;
          for (let column = 0; column < block; column++) sum += from[start + column] as number;
        }
        to[y * width + x] = sum / (block * block);
      }
    }
  }
  return small;
}

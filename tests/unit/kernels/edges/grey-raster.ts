import type { PixelSize } from '../../../../app/model/reference.ts';
import type { LinearRaster } from '../../../../workers/kernels/pixels/linear-raster.ts';

/** A neutral raster of those lightnesses (L*, CIE 15 the other way round). */
export function greyRaster(lightness: Float32Array, size: PixelSize): LinearRaster {
  const light = lightness.map((value) => {
    const f = (value + 16) / 116;
    return Math.min(1, Math.max(0, f > 6 / 29 ? f ** 3 : (value * 27) / 24389));
  });
  return { ...size, red: light, green: light.slice(), blue: light.slice() };
}

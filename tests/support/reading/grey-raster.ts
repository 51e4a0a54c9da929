import type { LinearRaster } from '../../../app/core/raster/linear-raster.ts';
import type { PixelSize } from '../../../app/core/raster/size.ts';

/** A neutral raster, its planes one and the same, of those lightnesses (L*, CIE 15 the other way round). */
export function greyRaster(lightness: Float32Array, size: PixelSize): LinearRaster {
  const light = new Float32Array(lightness.length);
  for (let i = 0; i < light.length; i++) {
    const value = lightness[i] as number;
    const f = (value + 16) / 116;
    light[i] = Math.min(1, Math.max(0, f > 6 / 29 ? f * f * f : (value * 27) / 24389));
  }
  return { ...size, red: light, green: light, blue: light };
}

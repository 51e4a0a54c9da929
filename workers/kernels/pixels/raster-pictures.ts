import { blueShare, greenShare, redShare } from './lightness.ts';
import type { LinearRaster } from './linear-raster.ts';
import { codeOfLinear } from './srgb.ts';

type Rgba = Uint8ClampedArray<ArrayBuffer>;

/**
 * The greyscale: RGBA, every pixel the neutral grey of the same luminance, so of the same L* (to
 * the half code a byte can't show).
 */
export function greyOf(raster: LinearRaster): Rgba {
  const { red, green, blue } = raster;
  const rgba = new Uint8ClampedArray(4 * red.length).fill(255);
  for (let i = 0, to = 0; i < red.length; i++, to += 4) {
    const code = codeOfLinear(
      redShare * (red[i] as number) +
        greenShare * (green[i] as number) +
        blueShare * (blue[i] as number),
    );
    rgba[to] = code;
    rgba[to + 1] = code;
    rgba[to + 2] = code;
  }
  return rgba;
}

/** The cropped reference as it is looked at: RGBA, encoded sRGB. */
export function referenceRgba(raster: LinearRaster): Rgba {
  const { red, green, blue } = raster;
  const rgba = new Uint8ClampedArray(4 * red.length).fill(255);
  for (let i = 0, to = 0; i < red.length; i++, to += 4) {
    rgba[to] = codeOfLinear(red[i] as number);
    rgba[to + 1] = codeOfLinear(green[i] as number);
    rgba[to + 2] = codeOfLinear(blue[i] as number);
  }
  return rgba;
}

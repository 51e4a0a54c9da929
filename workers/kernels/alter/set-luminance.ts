import { blueShare, greenShare, redShare } from '../pixels/lightness.ts';
import type { LinearRaster } from '../pixels/linear-raster.ts';

/** Luminance 0..1 of L* 0..100 (CIE 15). */
export const luminanceOf = (lightness: number): number =>
  lightness > 8 ? ((lightness + 16) / 116) ** 3 : (lightness * 27) / 24389;

/** In near-black the camera's noise is all the colour there is: it grows no more than this. */
const mostColour = 4;

/**
 * Gives one pixel another luminance, its colour kept: all channels scaled alike, drawn to grey only as
 * far as the range 0..1 asks for.
 */
export function setLuminance(raster: LinearRaster, i: number, luminance: number): void {
  const { red, green, blue } = raster;
  const [r, g, b] = [red[i] as number, green[i] as number, blue[i] as number];
  const was = redShare * r + greenShare * g + blueShare * b;
  let colour = was > 0 ? Math.min(mostColour, luminance / was) : 0;
  const over = Math.max(r, g, b) - was;
  if (over > 0) colour = Math.min(colour, (1 - luminance) / over);
  red[i] = Math.max(0, Math.min(1, luminance + colour * (r - was)));
  green[i] = Math.max(0, Math.min(1, luminance + colour * (g - was)));
  blue[i] = Math.max(0, Math.min(1, luminance + colour * (b - was)));
}

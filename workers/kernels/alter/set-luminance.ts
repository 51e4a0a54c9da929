import { blueShare, greenShare, redShare } from '../pixels/lightness.ts';
import type { LinearRaster } from '../pixels/linear-raster.ts';

/** Luminance 0..1 of L* 0..100 (CIE 15). */
export function luminanceOf(lightness: number): number {
  if (lightness <= 8) return (lightness * 27) / 24389;
  const root = (lightness + 16) / 116;
  return root * root * root;
}

/** In near-black the camera's noise is all the colour there is: it grows no more than this. */
const mostColour = 4;

/**
 * Gives one pixel another luminance, its colour kept: all channels scaled alike, drawn to grey only as
 * far as the range 0..1 asks for.
 */
export function setLuminance(
  { red, green, blue }: LinearRaster,
  i: number,
  luminance: number,
): void {
  const r = red[i] as number;
  const g = green[i] as number;
  const b = blue[i] as number;
  const was = redShare * r + greenShare * g + blueShare * b;
  let colour = was > 0 ? Math.min(mostColour, luminance / was) : 0;
  const over = Math.max(r, g, b) - was;
  if (over > 0) colour = Math.min(colour, (1 - luminance) / over);
  red[i] = Math.max(0, Math.min(1, luminance + colour * (r - was)));
  green[i] = Math.max(0, Math.min(1, luminance + colour * (g - was)));
  blue[i] = Math.max(0, Math.min(1, luminance + colour * (b - was)));
}

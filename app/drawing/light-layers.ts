import type { Lab } from '../core/colour/lab.ts';
import { applySquint, type LightPlanes, type Pixels, type Squint } from '../core/raster/squint.ts';
import { type Layer, slotLayer } from './layers.ts';

/** A lightness map (L* x 2.55 a pixel) in neutral greys, each lightness taken to another first. */
export function lightnessLayer(
  lightnessMap: Uint8Array,
  shownAs: (lightness: number) => number,
): Layer {
  const greys = Array.from({ length: 256 }, (_, bin): Lab => [shownAs(bin / 2.55), 0, 0]);
  return slotLayer(lightnessMap, greys);
}

/** The picture as half-closed eyes see it, blown up to the size of the canvas. */
export const squintLayer =
  (light: LightPlanes, squint: Squint, grey: boolean): Layer =>
  (context) => {
    const { width, height } = light;
    const small = new OffscreenCanvas(width, height);
    const rgba = applySquint(light, squint, grey);
    small.getContext('2d')?.putImageData(new ImageData(rgba, width, height), 0, 0);
    context.drawImage(small, 0, 0, context.canvas.width, context.canvas.height);
  };

/** The pixels of a picture; nothing where its bitmap was handed back already. */
export function pixelsOf(bitmap: ImageBitmap): Pixels | null {
  if (bitmap.width === 0) return null;
  const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  context?.drawImage(bitmap, 0, 0);
  return context?.getImageData(0, 0, bitmap.width, bitmap.height) ?? null;
}

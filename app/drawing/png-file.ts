import type { PixelSize } from '../core/raster/size.ts';
import type { Layer } from './layers.ts';

/** A canvas as a file to be handed on; none where no canvas could be had, or where it can't be packed. */
export async function pngFile(canvas: HTMLCanvasElement | null, name: string): Promise<File[]> {
  const png = await new Promise<Blob | null>((settle) => {
    if (canvas) canvas.toBlob(settle, 'image/png');
    else settle(null);
  });
  return png ? [new File([png], `${name}.png`, { type: 'image/png' })] : [];
}

/** A canvas with a layer painted on it; null where the browser has none to give. */
export function paintedCanvas(
  document: Document,
  layer: Layer,
  { width, height }: PixelSize,
): HTMLCanvasElement | null {
  const canvas = document.createElement('canvas');
  Object.assign(canvas, { width, height });
  const context = canvas.getContext('2d');
  if (!context) return null;
  layer(context);
  return canvas;
}

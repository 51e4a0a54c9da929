import { greyOf, type LinearRaster, referenceRgba } from '../../app/core/raster/linear-raster.ts';
import type { PixelSize } from '../../app/core/raster/size.ts';

/** JPEG bytes of an opaque RGBA picture, long side at most `longSidePx`. */
export async function encodeJpeg(
  picture: ImageData,
  longSidePx: number,
  quality: number,
): Promise<ArrayBuffer> {
  const scale = Math.min(1, longSidePx / Math.max(picture.width, picture.height));
  const full = canvasOf(picture.width, picture.height);
  full.context.putImageData(picture, 0, 0);
  if (scale === 1) return bytesOf(full.canvas, quality);
  const width = Math.max(1, Math.round(picture.width * scale));
  const height = Math.max(1, Math.round(picture.height * scale));
  const small = canvasOf(width, height);
  small.context.imageSmoothingQuality = 'high';
  small.context.drawImage(full.canvas, 0, 0, width, height);
  return bytesOf(small.canvas, quality);
}

async function bytesOf(canvas: OffscreenCanvas, quality: number): Promise<ArrayBuffer> {
  const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality });
  return blob.arrayBuffer();
}

function canvasOf(width: number, height: number) {
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d', { alpha: false, colorSpace: 'srgb' });
  if (!context) throw new Error('no 2d canvas in the worker');
  return { canvas, context };
}

/** A bitmap of the photo on white paper, long side at most `longSidePx`, never enlarged. */
export function makePreview(bitmap: ImageBitmap, size: PixelSize, longSidePx: number): ImageBitmap {
  const scale = Math.min(1, longSidePx / Math.max(size.width, size.height));
  const width = Math.max(1, Math.round(size.width * scale));
  const height = Math.max(1, Math.round(size.height * scale));
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d', { alpha: false, colorSpace: 'srgb' });
  if (!context) throw new Error('no 2d canvas in the worker');
  context.fillStyle = '#fff';
  context.fillRect(0, 0, width, height);
  context.imageSmoothingQuality = 'high';
  context.drawImage(bitmap, 0, 0, width, height);
  return canvas.transferToImageBitmap();
}

interface RasterBitmaps {
  readonly reference: ImageBitmap;
  /** True L* of the same pixels. */
  readonly grey: ImageBitmap;
  /** The reference's pixels, for writing it to a file. */
  readonly picture: ImageData;
}

/** The two pictures of a raster as bitmaps of its size; the receiver closes them. */
export async function makeRasterBitmaps(raster: LinearRaster): Promise<RasterBitmaps> {
  const { width, height } = raster;
  const picture = new ImageData(referenceRgba(raster), width, height);
  const reference = await createImageBitmap(picture);
  const grey = await createImageBitmap(new ImageData(greyOf(raster), width, height));
  return { reference, grey, picture };
}

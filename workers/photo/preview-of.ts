import type { PixelSize } from '../../app/model/pixel-size.ts';

export const previewLongSidePx = 1600;

/** A bitmap of the photo on white paper, long side at most `longSidePx`, never enlarged. */
export function previewOf(bitmap: ImageBitmap, size: PixelSize, longSidePx: number): ImageBitmap {
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

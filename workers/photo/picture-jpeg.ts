/** JPEG bytes of an opaque RGBA picture, long side at most `longSidePx`. */
export async function pictureJpeg(
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

/** RGBA bytes of a part of a canvas of any kind: a picture's layers have no 2d context to ask. */
export function canvasPixels(
  canvas: HTMLCanvasElement,
  [x, y, width, height]: readonly [number, number, number, number],
): Uint8ClampedArray {
  const context = new OffscreenCanvas(canvas.width, canvas.height).getContext('2d');
  if (!context) throw new Error('No canvas can be had here.');
  context.drawImage(canvas, 0, 0);
  return context.getImageData(x, y, width, height).data;
}

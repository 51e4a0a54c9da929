import type { RgbSpace } from '../../app/core/colour/display-p3.ts';
import type { PixelSize } from '../../app/core/raster/size.ts';
import { uprightSize } from '../../app/core/reference/photo-header.ts';

/** What an engine does with the camera's turn (EXIF orientation) when it decodes a photo. */
export interface EngineTurn {
  /** The options it takes, and with which it turns photos where it ever does. */
  readonly options: ImageBitmapOptions;
  /** False: its bitmaps lie as they are stored. */
  readonly turns: boolean;
}

/**
 * 'from-image' is the default by today's standard (HTML, ImageBitmapOptions), but older engines left the camera's turn
 * in without it, and the oldest refuse the word.
 */
const ways: readonly ImageBitmapOptions[] = [{ imageOrientation: 'from-image' }, {}];

/** A JPEG of two pixels side by side, one above the other once turned by its EXIF orientation 6 (own, made with sharp). */
const lying =
  '/9j/4QAiRXhpZgAATU0AKgAAAAgAAQESAAMAAAABAAYAAAAAAAD/2wBDAAEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEB' +
  'AQEBAQEBAQEBAQEBAQEBAQEBAQH/wAALCAABAAIBAREA/8QAFAABAAAAAAAAAAAAAAAAAAAACv/EABoQAAEFAQAAAAAAAAAAAAAAAAkABwg5eLj/2gAIAQEA' +
  'AD8AXyJ2rIaeAIb86tyv/9k=';

/**
 * Decodes a tiny turned photo in every way and looks at its shape. Where none can be decoded the first way is answered,
 * as if it turned: what the engine lacks then is another thing.
 */
export async function engineTurn(): Promise<EngineTurn> {
  const photo = new Blob([Uint8Array.from(atob(lying), (sign) => sign.charCodeAt(0))]);
  let taken: ImageBitmapOptions | null = null;
  for (const options of ways) {
    try {
      const bitmap = await createImageBitmap(photo, options);
      const stands = bitmap.height > bitmap.width;
      bitmap.close();
      if (stands) return { options, turns: true };
      taken ??= options;
    } catch {
      // not in this way
    }
  }
  return { options: taken ?? { imageOrientation: 'from-image' }, turns: taken === null };
}

/**
 * The canvas matrix [a, b, c, d, e, f] that brings a photo of that size, as it is stored, upright. `orientation` 1..8:
 * which sides of the scene the first row and the first column are (CIPA DC-008, EXIF 2.32, 4.6.4 Orientation).
 */
export function uprightMatrix(
  orientation: number,
  { width, height }: PixelSize,
): readonly [number, number, number, number, number, number] {
  switch (orientation) {
    case 2:
      return [-1, 0, 0, 1, width, 0];
    case 3:
      return [-1, 0, 0, -1, width, height];
    case 4:
      return [1, 0, 0, -1, 0, height];
    case 5:
      return [0, 1, 1, 0, 0, 0];
    case 6:
      return [0, 1, -1, 0, height, 0];
    case 7:
      return [0, -1, -1, 0, height, width];
    case 8:
      return [0, -1, 1, 0, 0, width];
    default:
      return [1, 0, 0, 1, 0, 0];
  }
}

/** A decoded photo brought upright by the tag its header has; the one handed in is closed. Null where there is no canvas. */
export function turnUpright(
  stored: ImageBitmap,
  orientation: number,
  space: RgbSpace,
): ImageBitmap | null {
  const { width, height } = uprightSize({
    width: stored.width,
    height: stored.height,
    orientation,
  });
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d', { colorSpace: space });
  if (!context) return null;
  context.imageSmoothingEnabled = false; // whole quarters: pixel for pixel
  context.setTransform(...uprightMatrix(orientation, stored));
  context.drawImage(stored, 0, 0);
  stored.close();
  return canvas.transferToImageBitmap();
}

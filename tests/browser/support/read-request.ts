import type { ReadingWishes } from '../../../app/core/reading/reading.ts';
import { centredCrop } from '../../../app/core/reference/reference.ts';
import { type Orientation, sheetOf } from '../../../app/core/reference/sheet.ts';
import type { Pictures, ReadRequest } from '../../../workers/api.ts';

/** The whole width or height of a photo of that size on a quarter sheet lying the same way. */
export function readRequest(
  photo: Blob,
  width: number,
  height: number,
  wishes: ReadingWishes = {},
  longSidePx = 1600,
): ReadRequest {
  const lies: Orientation = width >= height ? 'across' : 'upright';
  const sheet = sheetOf('quarter', lies);
  return { photo, crop: centredCrop({ width, height }, sheet), sheet, wishes, longSidePx };
}

export function closePictures({ reference, grey }: Pictures): void {
  reference.close();
  grey.close();
}

/** A photograph blown up to 12 megapixels, as a phone's JPEG. */
export async function twelveMegapixels(url: URL): Promise<Blob> {
  const source = await createImageBitmap(await (await fetch(url)).blob());
  const canvas = new OffscreenCanvas(4000, 3000);
  canvas.getContext('2d')?.drawImage(source, 0, 0, 4000, 3000);
  source.close();
  return canvas.convertToBlob({ type: 'image/jpeg', quality: 0.92 });
}

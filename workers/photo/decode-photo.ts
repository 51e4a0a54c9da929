import type { PhotoHeader } from '../../app/model/photo/header-fields.ts';
import { photoHeader, uprightSize } from '../../app/model/photo-header.ts';
import { photoProblem, undecodable } from '../../app/model/photo-problem.ts';
import type { PixelSize } from '../../app/model/pixel-size.ts';
import { decodedSize } from './decoded-size.ts';
import { photoError } from './photo-error.ts';

export interface DecodedPhoto {
  /** Upright, perhaps smaller than the photo. The receiver closes it. */
  readonly bitmap: ImageBitmap;
  /** Size of the upright photo itself, px. */
  readonly size: PixelSize;
}

async function bytesOf(photo: Blob): Promise<Uint8Array> {
  try {
    return new Uint8Array(await photo.arrayBuffer());
  } catch (cause) {
    throw photoError('The file can no longer be read. Choose the photo again.', cause);
  }
}

/** 'from-image' is the default, but older engines left the camera's turn in without it. */
const upright: ImageBitmapOptions = { imageOrientation: 'from-image' };

/** Only of a JPEG is it known how every browser turns it; of others the shape is tried out. */
async function sureSize(photo: Blob, header: PhotoHeader): Promise<PixelSize> {
  const told = uprightSize(header);
  if (header.kind === 'jpeg') return told;
  const probe = await createImageBitmap(photo, { ...upright, resizeWidth: 64 });
  const lies = probe.width > probe.height;
  const square = Math.abs(probe.width - probe.height) <= 1;
  probe.close();
  const turned = !square && lies !== told.width > told.height;
  return turned ? { width: told.height, height: told.width } : told;
}

async function decode(
  photo: Blob,
  header: PhotoHeader,
  largestArea: number,
): Promise<DecodedPhoto> {
  const told = uprightSize(header);
  const known = told.width > 0 && told.height > 0;
  if (!known || decodedSize(told, largestArea).width === told.width) {
    const bitmap = await createImageBitmap(photo, upright);
    return { bitmap, size: { width: bitmap.width, height: bitmap.height } };
  }
  const size = await sureSize(photo, header);
  const { width, height } = decodedSize(size, largestArea);
  // Both sides are given: left to itself the browser may round the other one differently.
  const options = { ...upright, resizeWidth: width, resizeHeight: height } as const;
  const bitmap = await createImageBitmap(photo, { ...options, resizeQuality: 'high' });
  return { bitmap, size };
}

/**
 * Decodes a photo upright, at most `largestArea` px large; what its bytes already speak against is
 * refused before. Errors: `PhotoError` with a painter's sentence.
 */
export async function decodePhoto(photo: Blob, largestArea: number): Promise<DecodedPhoto> {
  const bytes = await bytesOf(photo);
  const problem = photoProblem(bytes);
  if (problem) throw photoError(problem);
  const header = photoHeader(bytes);
  if (!header) throw photoError(undecodable(null));
  try {
    return await decode(photo, header, largestArea);
  } catch (cause) {
    throw photoError(undecodable(header), cause);
  }
}

import type { PixelSize } from '../../app/core/raster/size.ts';
import { hasLostPixels } from '../../app/core/reference/lost-pixels.ts';
import { mayExceedSrgb } from '../../app/core/reference/may-exceed-srgb.ts';
import {
  type PhotoHeader,
  photoHeader,
  uprightSize,
} from '../../app/core/reference/photo-header.ts';
import { photoProblem } from '../../app/core/reference/photo-problem.ts';
import {
  browserTooOld,
  photoProblemInWords,
  undecodable,
} from '../../app/core/words/reference/photo-problem.ts';
import { type EngineTurn, engineTurn, turnUpright } from './photo-turn.ts';

/**
 * A photo that can't be used; the message is a painter's sentence. A plain Error with a name,
 * since the class would not survive the way from worker to page.
 */
export function photoError(sentence: string, cause?: unknown): Error {
  const error = new Error(sentence, { cause });
  error.name = 'PhotoError';
  return error;
}

/** A picture of one pixel that every browser can read: GIF89a specification, 1990. */
const onePixel = Uint8Array.of(
  ...[71, 73, 70, 56, 57, 97, 1, 0, 1, 0, 128, 0, 0, 0, 0, 0, 255, 255, 255],
  ...[44, 0, 0, 0, 0, 1, 0, 1, 0, 0, 2, 2, 68, 1, 0, 59],
);

/** Where even that can't be read the browser lacks something, and no photo is to blame. */
async function readsAnything({ options }: EngineTurn): Promise<boolean> {
  try {
    (await createImageBitmap(new Blob([onePixel]), { ...options, resizeWidth: 1 })).close();
    return new OffscreenCanvas(1, 1).getContext('2d') !== null;
  } catch {
    return false;
  }
}

/** Its name is no PhotoError: the painting stays as it is. */
const browserError = (cause?: unknown): Error =>
  Object.assign(new Error(browserTooOld, { cause }), { name: 'BrowserError' });

/** Largest area of a canvas that every browser fills; beyond it some give an empty one. */
export const largestAreaPx = 16_777_216;

/** Longest side decoded: keeps every turned cut-out under the 65,535 px a canvas may measure. */
const longestSidePx = 32_767;

/**
 * The size to decode a photo at: its own where it fits the area, else both sides reduced by one
 * factor, rounded down so that the area holds, and never to nothing.
 */
export function decodedSize(photo: PixelSize, largestArea: number): PixelSize {
  const { width, height } = photo;
  const scale = Math.min(
    Math.sqrt(largestArea / (width * height)),
    longestSidePx / Math.max(width, height),
  );
  if (scale >= 1) return { width, height };
  return {
    width: Math.max(1, Math.floor(width * scale)),
    height: Math.max(1, Math.floor(height * scale)),
  };
}

interface DecodedPhoto {
  /** Upright, perhaps smaller than the photo. The receiver closes it. */
  readonly bitmap: ImageBitmap;
  /** Size of the upright photo itself, px. */
  readonly size: PixelSize;
  /** True where its colours may lie beyond sRGB. */
  readonly wide: boolean;
  /** True where part of it is surely missing in the file. */
  readonly damaged: boolean;
}

async function bytesOf(photo: Blob): Promise<Uint8Array> {
  try {
    return new Uint8Array(await photo.arrayBuffer());
  } catch (cause) {
    throw photoError('The file can no longer be read. Choose the photo again.', cause);
  }
}

/** Only of a JPEG is it known how every browser turns it; of others the shape is tried out. */
async function sureSize(
  photo: Blob,
  header: PhotoHeader,
  options: ImageBitmapOptions,
): Promise<PixelSize> {
  const told = uprightSize(header);
  if (header.kind === 'jpeg') return told;
  const probe = await createImageBitmap(photo, { ...options, resizeWidth: 64 });
  const lies = probe.width > probe.height;
  const square = Math.abs(probe.width - probe.height) <= 1;
  probe.close();
  const turned = !square && lies !== told.width > told.height;
  return turned ? { width: told.height, height: told.width } : told;
}

/** As the engine hands it out: upright, or as it is stored where it leaves the camera's turn in. */
async function decodeAsIs(
  photo: Blob,
  header: PhotoHeader,
  largestArea: number,
  { options, turns }: EngineTurn,
): Promise<{ bitmap: ImageBitmap; size: PixelSize }> {
  const told = uprightSize(header);
  const known = told.width > 0 && told.height > 0;
  if (!known || decodedSize(told, largestArea).width === told.width) {
    const bitmap = await createImageBitmap(photo, options);
    return { bitmap, size: { width: bitmap.width, height: bitmap.height } };
  }
  const upright = await sureSize(photo, header, options);
  const size =
    turns || header.kind !== 'jpeg' ? upright : { width: header.width, height: header.height };
  const { width, height } = decodedSize(size, largestArea);
  // Both sides are given: left to itself the browser may round the other one differently.
  const smaller = { ...options, resizeWidth: width, resizeHeight: height } as const;
  const bitmap = await createImageBitmap(photo, { ...smaller, resizeQuality: 'high' });
  return { bitmap, size };
}

async function decode(
  photo: Blob,
  bytes: Uint8Array,
  header: PhotoHeader,
  largestArea: number,
  engine: EngineTurn,
): Promise<DecodedPhoto> {
  const facts = { wide: mayExceedSrgb(bytes), damaged: hasLostPixels(bytes) };
  const { bitmap, size } = await decodeAsIs(photo, header, largestArea, engine);
  const { kind, orientation } = header;
  if (engine.turns || kind !== 'jpeg' || orientation === 1) return { bitmap, size, ...facts };
  const turned = turnUpright(bitmap, orientation, facts.wide ? 'display-p3' : 'srgb');
  if (!turned) throw new TypeError('no canvas of that size');
  return { bitmap: turned, size: uprightSize({ ...size, orientation }), ...facts };
}

/**
 * Size of the upright photo as this browser decodes it, px, whatever its container says. Only of a
 * JPEG is the header enough. Errors: `PhotoError`.
 */
export async function decodedPhotoSize(photo: Blob): Promise<PixelSize> {
  const header = photoHeader(await bytesOf(photo));
  if (header?.kind === 'jpeg') return uprightSize(header);
  const { bitmap, size } = await decodePhoto(photo, largestAreaPx);
  bitmap.close();
  return size;
}

/**
 * Decodes a photo upright, at most `largestArea` px large; what its bytes already speak against is
 * refused before. Errors: `PhotoError` with a painter's sentence; `BrowserError` where no photo could be read.
 */
export async function decodePhoto(photo: Blob, largestArea: number): Promise<DecodedPhoto> {
  const bytes = await bytesOf(photo);
  const problem = photoProblem(bytes);
  if (problem) throw photoError(photoProblemInWords(problem));
  const header = photoHeader(bytes);
  if (!header) throw photoError(undecodable(null));
  if (typeof OffscreenCanvas === 'undefined') throw browserError();
  const engine = await engineTurn();
  try {
    return await decode(photo, bytes, header, largestArea, engine);
  } catch (cause) {
    if (!(await readsAnything(engine))) throw browserError(cause);
    throw photoError(undecodable(header), cause);
  }
}

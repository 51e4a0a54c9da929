import { readFile } from 'node:fs/promises';
import sharp from 'sharp';
import { decodedSize, largestAreaPx } from '../../../workers/photo/decode-photo.ts';
import type { RgbSpace } from '../../core/colour/display-p3.ts';
import { RasterReducer } from '../../core/raster/raster-reducer.ts';
import { type PixelSize, rasterSize } from '../../core/raster/size.ts';
import { hasLostPixels } from '../../core/reference/lost-pixels.ts';
import { mayExceedSrgb } from '../../core/reference/may-exceed-srgb.ts';
import { photoHeader } from '../../core/reference/photo-header.ts';
import { photoProblem } from '../../core/reference/photo-problem.ts';
import { centredCrop, cutOutOf } from '../../core/reference/reference.ts';
import { photoProblemInWords, undecodable } from '../../core/words/reference/photo-problem.ts';
import { CommandError, type PlanOptions } from './plan-options.ts';
import { unlikeTheApp } from './unlike-the-app.ts';

/** An upright photo on white paper: RGBA bytes of that space, opaque. */
interface LoadedPhoto extends PixelSize {
  readonly space: RgbSpace;
  readonly rgba: Uint8ClampedArray;
}

/** As its file is, beside its pixels. */
interface LoadedFile extends LoadedPhoto {
  /** True where part of it is surely missing in the file. */
  readonly damaged: boolean;
}

async function bytesOf(file: string): Promise<Uint8Array> {
  try {
    return await readFile(file);
  } catch (thrown) {
    const missing = (thrown as NodeJS.ErrnoException).code === 'ENOENT';
    throw new CommandError(missing ? `${file}: there is no such file` : `${file} can't be read`);
  }
}

/**
 * The photo's pixels as codes of that space. What a damaged profile says is passed over, as browsers
 * do: null where that leaves the codes in no known space.
 */
async function decodeIn(space: RgbSpace, bytes: Uint8Array): Promise<LoadedPhoto | null> {
  const wide = space === 'display-p3';
  let damaged = false;
  const image = sharp(bytes, {
    limitInputPixels: false, // the size limit is our own and has been checked
    failOn: 'error',
    // The library's first step would clip to sRGB: a wide photo goes by its own profile at the end.
    ignoreIcc: wide,
  }).autoOrient();
  if (wide) image.withIccProfile('p3');
  image.on('warning', (text: string) => {
    if (wide && /profile/i.test(text)) damaged = true;
  });
  const { autoOrient: upright } = await image.metadata();
  const { width, height } = decodedSize(upright, largestAreaPx);
  if (width !== upright.width || height !== upright.height) {
    image.resize(width, height, { fit: 'fill' });
  }
  const data = await image
    .flatten({ background: '#ffffff' })
    .toColourspace('srgb')
    .ensureAlpha()
    .raw({ depth: 'uchar' })
    .toBuffer();
  const rgba = new Uint8ClampedArray(data.buffer, data.byteOffset, data.length);
  return damaged ? null : { rgba, width, height, space };
}

/**
 * Decodes a photo as the worker does: turned by its EXIF, in sRGB or, where its colours may lie
 * beyond, in Display P3, transparent parts white, at most 16,777,216 px. Errors: `CommandError` with
 * the cause.
 */
export async function loadPhoto(file: string): Promise<LoadedFile> {
  const bytes = await bytesOf(file);
  const problem = photoProblem(bytes);
  if (problem) throw new CommandError(`${file}: ${photoProblemInWords(problem)}`);
  const header = photoHeader(bytes);
  const { orientation = 1 } = await sharp(bytes, { limitInputPixels: false })
    .metadata()
    .catch(() => ({ orientation: 1 })); // what can't be read is said below
  const unlike = header && unlikeTheApp(bytes, header, orientation);
  if (unlike) throw new CommandError(`${file}: ${unlike}`);
  try {
    const wide = mayExceedSrgb(bytes) ? await decodeIn('display-p3', bytes) : null;
    const photo = wide ?? (await decodeIn('srgb', bytes));
    if (photo) return { ...photo, damaged: hasLostPixels(bytes) };
  } catch {
    // Said below.
  }
  throw new CommandError(`${file}: ${undecodable(header, 'this command')}`);
}

/** The centre of the photo in the sheet's ratio, averaged to the working raster; and what share of the photo that is. */
export function cropToRaster(photo: LoadedPhoto, sheet: PlanOptions['sheet']) {
  const crop = centredCrop(photo, sheet);
  const cut = cutOutOf(photo, crop);
  const left = Math.min(Math.max(0, -cut.matrix[4]), photo.width - cut.width);
  const top = Math.min(Math.max(0, -cut.matrix[5]), photo.height - cut.height);
  const reducer = new RasterReducer(cut, rasterSize(cut.width, cut.height), photo.space);
  for (let row = 0; row < cut.height; row++) {
    const start = ((top + row) * photo.width + left) * 4;
    reducer.addRows(photo.rgba.subarray(start, start + cut.width * 4), 1);
  }
  return { ...reducer.finish(), share: crop.size[0] * crop.size[1] };
}

import { readFile } from 'node:fs/promises';
import sharp from 'sharp';
import { decodedSize, largestAreaPx } from '../../../workers/photo/decode-photo.ts';
import { RasterReducer } from '../../core/raster/raster-reducer.ts';
import { type PixelSize, rasterSize } from '../../core/raster/size.ts';
import { photoHeader } from '../../core/reference/photo-header.ts';
import { photoProblem, undecodable } from '../../core/reference/photo-problem.ts';
import { centredCrop, cutOutOf } from '../../core/reference/reference.ts';
import { CommandError, type PlanOptions } from './plan-options.ts';

/** An upright photo on white paper: RGBA bytes, sRGB, opaque. */
interface LoadedPhoto extends PixelSize {
  readonly rgba: Uint8ClampedArray;
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
 * Decodes a photo as the worker does: turned by its EXIF, in sRGB, transparent parts white, at most
 * 16,777,216 px. Errors: `CommandError` with the cause.
 */
export async function loadPhoto(file: string): Promise<LoadedPhoto> {
  const bytes = await bytesOf(file);
  const problem = photoProblem(bytes);
  if (problem) throw new CommandError(`${file}: ${problem}`);
  try {
    // The size limit is our own and has been checked.
    const image = sharp(bytes, { limitInputPixels: false, failOn: 'error' }).autoOrient();
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
    return {
      rgba: new Uint8ClampedArray(data.buffer, data.byteOffset, data.length),
      width,
      height,
    };
  } catch {
    throw new CommandError(`${file}: ${undecodable(photoHeader(bytes))}`);
  }
}

/** The centre of the photo in the sheet's ratio, averaged to the working raster. */
export function cropToRaster(photo: LoadedPhoto, sheet: PlanOptions['sheet']) {
  const cut = cutOutOf(photo, centredCrop(photo, sheet));
  const left = Math.min(Math.max(0, -cut.matrix[4]), photo.width - cut.width);
  const top = Math.min(Math.max(0, -cut.matrix[5]), photo.height - cut.height);
  const reducer = new RasterReducer(cut, rasterSize(cut.width, cut.height));
  for (let row = 0; row < cut.height; row++) {
    const start = ((top + row) * photo.width + left) * 4;
    reducer.addRows(photo.rgba.subarray(start, start + cut.width * 4), 1);
  }
  return reducer.finish();
}

import { cutOutOf } from '../../app/model/cut-out.ts';
import type { Crop } from '../../app/model/reference.ts';
import type { ClippedShares, LinearRaster } from '../kernels/pixels/linear-raster.ts';
import { RasterReducer } from '../kernels/pixels/raster-reducer.ts';
import { rasterSize } from '../kernels/pixels/raster-size.ts';
import { decodePhoto } from './decode-photo.ts';
import { largestAreaPx } from './decoded-size.ts';
import { readStrips } from './read-strips.ts';

export interface ReadRaster {
  readonly raster: LinearRaster;
  readonly clipped: ClippedShares;
  /** True where the browser was found to change pixels a little as they are read. */
  readonly shaky: boolean;
}

/** Where memory was short before, the photo is decoded at a quarter of the area as well. */
const areaFor = (longSidePx: number): number =>
  longSidePx >= 1600 ? largestAreaPx : largestAreaPx / 4;

/**
 * From a photo's bytes to the working raster of its crop, averaged in linear light. `pause` is
 * awaited between strips with the part done, 0..1, and may throw to stop. Errors: `PhotoError`.
 */
export async function readRaster(
  photo: Blob,
  crop: Crop,
  longSidePx: number,
  pause: (part: number) => Promise<void>,
): Promise<ReadRaster> {
  const { bitmap } = await decodePhoto(photo, areaFor(longSidePx));
  try {
    await pause(0.2); // decoding is the browser's; by experience about a fifth of the whole
    const cut = cutOutOf(bitmap, crop);
    const reducer = new RasterReducer(cut, rasterSize(cut.width, cut.height, longSidePx));
    const { shaky } = await readStrips(bitmap, cut, {
      take: (rgba, rows) => reducer.addRows(rgba, rows),
      pause: (part) => pause(0.2 + 0.8 * part),
    });
    return { ...reducer.finish(), shaky };
  } finally {
    bitmap.close();
  }
}

import type { LinearRaster } from '../kernels/pixels/linear-raster.ts';
import { greyOf, referenceRgba } from '../kernels/pixels/raster-pictures.ts';

export interface RasterBitmaps {
  readonly reference: ImageBitmap;
  /** True L* of the same pixels. */
  readonly grey: ImageBitmap;
  /** The reference's pixels, for writing it to a file. */
  readonly picture: ImageData;
}

/** The two pictures of a raster as bitmaps of its size; the receiver closes them. */
export async function rasterBitmaps(raster: LinearRaster): Promise<RasterBitmaps> {
  const { width, height } = raster;
  const picture = new ImageData(referenceRgba(raster), width, height);
  const reference = await createImageBitmap(picture);
  const grey = await createImageBitmap(new ImageData(greyOf(raster), width, height));
  return { reference, grey, picture };
}

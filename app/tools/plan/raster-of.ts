import { RasterReducer } from '../../../workers/kernels/pixels/raster-reducer.ts';
import { rasterSize } from '../../../workers/kernels/pixels/raster-size.ts';
import { cutOutOf } from '../../model/cut-out.ts';
import { centredCrop } from '../../model/reference.ts';
import type { LoadedPhoto } from './load-photo.ts';
import type { PlanOptions } from './plan-options.ts';

const longSidePx = 1600;

/** The centre of the photo in the sheet's ratio, averaged to the working raster. */
export function rasterOf(photo: LoadedPhoto, sheet: PlanOptions['sheet']) {
  const cut = cutOutOf(photo, centredCrop(photo, sheet));
  const left = Math.min(Math.max(0, -cut.matrix[4]), photo.width - cut.width);
  const top = Math.min(Math.max(0, -cut.matrix[5]), photo.height - cut.height);
  const reducer = new RasterReducer(cut, rasterSize(cut.width, cut.height, longSidePx));
  for (let row = 0; row < cut.height; row++) {
    const start = ((top + row) * photo.width + left) * 4;
    reducer.addRows(photo.rgba.subarray(start, start + cut.width * 4), 1);
  }
  return reducer.finish();
}

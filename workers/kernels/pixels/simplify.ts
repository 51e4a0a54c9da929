import type { PixelSize } from '../../../app/model/pixel-size.ts';
import { edgePreserving } from './edge-preserving.ts';
import { gaussianBlur } from './gaussian-blur.ts';
import { type LabPlanes, labInPlace } from './lab-planes.ts';
import type { LinearRaster } from './linear-raster.ts';

/** First a blur this wide on the sheet, mm: what squinting does to the finest grain. */
const blurMm = 0.5;
/** Then smoothing at brush scale, mm. */
const brushMm = 2;
/** A step of this many L* stands in the way like `brushMm` of paper. Set by eye on photographs. */
const lightnessStep = 8;
/** The same for lightness, a* and b* together. */
const colourStep = 12;

/**
 * The simplified planes L*, a*, b* of a raster; the raster is left alone. Lightness is smoothed by
 * its own differences only, so that other hues at equal lightness give the very same values.
 */
export function* simplify(raster: LinearRaster, pxPerMm: number): Generator<void, LabPlanes> {
  const size: PixelSize = { width: raster.width, height: raster.height };
  const copy: LinearRaster = {
    ...size,
    red: raster.red.slice(),
    green: raster.green.slice(),
    blue: raster.blue.slice(),
  };
  yield* gaussianBlur([copy.red, copy.green, copy.blue], size, Math.max(1, blurMm * pxPerMm));
  const planes = labInPlace(copy);
  yield;
  const spacePx = Math.max(1, brushMm * pxPerMm);
  const { lightness, a, b } = planes;
  yield* edgePreserving([a, b], [lightness, a, b], size, { spacePx, tone: colourStep });
  yield* edgePreserving([lightness], [lightness], size, { spacePx, tone: lightnessStep });
  return planes;
}

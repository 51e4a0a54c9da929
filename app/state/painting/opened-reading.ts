import type { SubjectRequest } from '../../../workers/api.ts';
import type { Painting } from '../../core/decisions/painting.ts';
import { hashCodes } from '../../core/numeric/hash.ts';
import { computePxPerMm } from '../../core/raster/size.ts';
import type { MassSizes, MassWash } from '../../core/reading/masses.ts';
import type { WashShapesRequest } from '../../core/reading/shapes/wash-masses.ts';
import type { SubjectStroke } from '../../core/reading/subject/subject.ts';
import type { KeptReading } from '../../storage/plans.ts';

/** What can be shown of a painting: the reading with its pictures in colour and in true grey. */
export interface OpenedReading extends KeptReading {
  readonly reference: ImageBitmap;
  readonly grey: ImageBitmap;
}

/** The same without the pictures, which are not kept. */
export function keptReadingOf(opened: KeptReading): KeptReading {
  const { reading, slotMap, lightnessMap, referenceJpeg } = opened;
  return { reading, slotMap, referenceJpeg, ...(lightnessMap && { lightnessMap }) };
}

/** What the worker is asked while she draws over the picture that is seen. */
export function subjectRequest(
  { id, reference }: Painting,
  { reading, referenceJpeg }: OpenedReading,
  strokes: readonly SubjectStroke[],
): SubjectRequest {
  const { raster, sheet } = reading;
  return {
    // By its bytes too: a picture painted otherwise is another one.
    picture: JSON.stringify([id, reference, hashCodes(new Uint8Array(referenceJpeg))]),
    referenceJpeg,
    longSidePx: Math.max(raster.width, raster.height),
    pxPerMm: computePxPerMm(raster, sheet),
    strokes,
  };
}

/** What the worker is asked to show the shapes of one wash of the picture that is seen. */
export function washShapesRequest(
  { reading, slotMap }: Pick<OpenedReading, 'reading' | 'slotMap'>,
  wash: MassWash,
  sizes: MassSizes,
): WashShapesRequest {
  const { raster, sheet, slots } = reading;
  const pxPerMm = computePxPerMm(raster, sheet);
  return { slotMap, slots, size: raster, pxPerMm, wash, sizes };
}

import type { SubjectRequest, WashShapesRequest } from '../../../workers/api.ts';
import type { Painting } from '../../core/decisions/painting.ts';
import type { MassSizes, MassWash } from '../../core/reading/masses.ts';
import type { SubjectStroke } from '../../core/reading/subject/subject.ts';
import type { KeptReading } from '../../storage/plans.ts';

/** What can be shown of a painting: the reading with its pictures in colour and in true grey. */
export interface OpenedReading extends KeptReading {
  readonly reference: ImageBitmap;
  readonly grey: ImageBitmap;
}

/** A number that tells one file's bytes from another's (FNV-1a, 32 bits; Fowler, Noll and Vo). */
function hashBytes(bytes: ArrayBuffer): number {
  let digest = 0x811c9dc5;
  for (const byte of new Uint8Array(bytes)) digest = Math.imul(digest ^ byte, 0x01000193);
  return digest >>> 0;
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
    picture: JSON.stringify([id, reference, hashBytes(referenceJpeg)]),
    referenceJpeg,
    longSidePx: Math.max(raster.width, raster.height),
    pxPerMm: Math.sqrt((raster.width * raster.height) / (sheet.widthMm * sheet.heightMm)),
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
  const pxPerMm = Math.sqrt((raster.width * raster.height) / (sheet.widthMm * sheet.heightMm));
  return { slotMap, slots, size: raster, pxPerMm, wash, sizes };
}

import type { SubjectRequest } from '../../workers/analysis-api.ts';
import type { Painting } from '../model/painting.ts';
import type { SubjectStroke } from '../model/subject.ts';
import { digestOf } from './digest-of.ts';
import type { Seen } from './seen.ts';

/** What the worker is asked while she draws over the picture that is seen. */
export function subjectRequest(
  { id, reference }: Painting,
  { reading, referenceJpeg }: Seen,
  strokes: readonly SubjectStroke[],
): SubjectRequest {
  const { raster, sheet } = reading;
  return {
    // By its bytes too: a picture painted otherwise is another one.
    picture: JSON.stringify([id, reference, digestOf(referenceJpeg)]),
    referenceJpeg,
    longSidePx: Math.max(raster.width, raster.height),
    pxPerMm: Math.sqrt((raster.width * raster.height) / (sheet.widthMm * sheet.heightMm)),
    strokes,
  };
}

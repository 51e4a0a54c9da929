import type { WashShapesRequest } from '../../workers/analysis-api.ts';
import type { MassSizes, MassWash } from '../model/masses.ts';
import type { Seen } from './seen.ts';

/** What the worker is asked to show the shapes of one wash of the picture that is seen. */
export function washShapesRequest(
  { reading, slotMap }: Pick<Seen, 'reading' | 'slotMap'>,
  wash: MassWash,
  sizes: MassSizes,
): WashShapesRequest {
  const { raster, sheet, slots } = reading;
  const pxPerMm = Math.sqrt((raster.width * raster.height) / (sheet.widthMm * sheet.heightMm));
  return { slotMap, slots, size: raster, pxPerMm, wash, sizes };
}

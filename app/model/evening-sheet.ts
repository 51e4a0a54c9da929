import { orientationOf, type Sheet, sheetFormats, sheetOf, smallestSheetMm } from './sheet.ts';

/** So near, mm, a sheet is one the trade sells. */
const nearMm = 2;

/**
 * A sheet of the same shape with this share of the area: one that is sold where it is as near as that, else cut
 * to the mm. Null where it would be too small to paint on.
 */
export function smallerSheet(sheet: Sheet, share: number): Sheet | null {
  const scale = Math.sqrt(share);
  const [widthMm, heightMm] = [sheet.widthMm * scale, sheet.heightMm * scale];
  if (Math.min(widthMm, heightMm) < smallestSheetMm) return null;
  const formats = Object.keys(sheetFormats) as (keyof typeof sheetFormats)[];
  const sold = formats
    .map((format) => sheetOf(format, orientationOf(sheet)))
    .find(
      (each) =>
        Math.abs(each.widthMm - widthMm) <= nearMm && Math.abs(each.heightMm - heightMm) <= nearMm,
    );
  return sold ?? { format: 'own', widthMm: Math.round(widthMm), heightMm: Math.round(heightMm) };
}

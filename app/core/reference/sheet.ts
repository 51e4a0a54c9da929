/**
 * Paper formats the trade sells, sides in mm. Imperial: 22 x 30 inches and its halves (common practice, no source);
 * A5 to A2: ISO 216:2007. Blocks in inches and in centimetres as they are sold (common practice, no source).
 */
export const sheetFormats = {
  eighth: { shortMm: 191, longMm: 279 },
  quarter: { shortMm: 279, longMm: 381 },
  half: { shortMm: 381, longMm: 559 },
  full: { shortMm: 559, longMm: 762 },
  a5: { shortMm: 148, longMm: 210 },
  a4: { shortMm: 210, longMm: 297 },
  a3: { shortMm: 297, longMm: 420 },
  a2: { shortMm: 420, longMm: 594 },
  in9x12: { shortMm: 229, longMm: 305 },
  in10x14: { shortMm: 254, longMm: 356 },
  in12x16: { shortMm: 305, longMm: 406 },
  cm24x32: { shortMm: 240, longMm: 320 },
  cm30x40: { shortMm: 300, longMm: 400 },
  cm36x48: { shortMm: 360, longMm: 480 },
} as const;

export type SheetFormat = keyof typeof sheetFormats | 'own';

export type Orientation = 'upright' | 'across';

/** The paper. widthMm x heightMm is as it lies before her: across is wider than high. */
export interface Sheet {
  readonly format: SheetFormat;
  readonly widthMm: number;
  readonly heightMm: number;
}

export const smallestSheetMm = 50;
export const largestSheetMm = 2000;

/** A sheet of a known format, turned as asked. */
export function sheetOf(format: keyof typeof sheetFormats, orientation: Orientation): Sheet {
  const { shortMm, longMm } = sheetFormats[format];
  return orientation === 'across'
    ? { format, widthMm: longMm, heightMm: shortMm }
    : { format, widthMm: shortMm, heightMm: longMm };
}

export const orientationOf = (sheet: Sheet): Orientation =>
  sheet.widthMm >= sheet.heightMm ? 'across' : 'upright';

/** The same paper turned by a quarter if it does not already lie that way. */
export function turned(sheet: Sheet, orientation: Orientation): Sheet {
  if (orientationOf(sheet) === orientation) return sheet;
  return { ...sheet, widthMm: sheet.heightMm, heightMm: sheet.widthMm };
}

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

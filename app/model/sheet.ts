/** Paper formats the trade sells. Sizes in mm, [short side, long side]. */
export const sheetFormats = {
  eighth: { name: 'eighth imperial', shortMm: 191, longMm: 279 },
  quarter: { name: 'quarter imperial', shortMm: 279, longMm: 381 },
  half: { name: 'half imperial', shortMm: 381, longMm: 559 },
  full: { name: 'full imperial', shortMm: 559, longMm: 762 },
  a5: { name: 'A5', shortMm: 148, longMm: 210 },
  a4: { name: 'A4', shortMm: 210, longMm: 297 },
  a3: { name: 'A3', shortMm: 297, longMm: 420 },
  a2: { name: 'A2', shortMm: 420, longMm: 594 },
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

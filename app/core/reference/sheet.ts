import { capitalize } from '../words/numbers.ts';
import { inchesAcross, typedMm } from '../words/units.ts';

/**
 * Paper formats the trade sells, sides in mm. Imperial: 22 x 30 inches and its halves (common practice, no source);
 * A5 to A2: ISO 216:2007. Blocks in inches and in centimetres as they are sold (common practice, no source).
 */
export const sheetFormats = {
  eighth: { name: 'eighth imperial', shortMm: 191, longMm: 279 },
  quarter: { name: 'quarter imperial', shortMm: 279, longMm: 381 },
  half: { name: 'half imperial', shortMm: 381, longMm: 559 },
  full: { name: 'full imperial', shortMm: 559, longMm: 762 },
  a5: { name: 'A5', shortMm: 148, longMm: 210 },
  a4: { name: 'A4', shortMm: 210, longMm: 297 },
  a3: { name: 'A3', shortMm: 297, longMm: 420 },
  a2: { name: 'A2', shortMm: 420, longMm: 594 },
  in9x12: { name: '9 × 12 in', shortMm: 229, longMm: 305 },
  in10x14: { name: '10 × 14 in', shortMm: 254, longMm: 356 },
  in12x16: { name: '12 × 16 in', shortMm: 305, longMm: 406 },
  cm24x32: { name: '24 × 32 cm', shortMm: 240, longMm: 320 },
  cm30x40: { name: '30 × 40 cm', shortMm: 300, longMm: 400 },
  cm36x48: { name: '36 × 48 cm', shortMm: 360, longMm: 480 },
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

/** A typed length of a sheet in mm, or the sentence that says what is wrong with it. */
function sideOf(text: string, name: string): number | string {
  if (text.trim() === '') return `The ${name} is missing: write it in millimetres.`;
  const mm = typedMm(text);
  if (mm === null)
    return `The ${name} can't be read: write it in millimetres, like 280 or 280.5, or with its unit, like 28 cm or 11 in.`;
  if (mm < smallestSheetMm)
    return `The ${name} is too small: a sheet is at least ${smallestSheetMm} mm each way. Is it in centimetres or inches? Write 28 cm, or 11 in.`;
  if (mm > largestSheetMm)
    return `The ${name} is too large: a sheet is at most ${largestSheetMm} mm each way. Write it in millimetres.`;
  return mm;
}

/** Her own sheet from what she typed, or the sentence for the first side that won't do. */
export function ownSheet(width: string, height: string): Sheet | string {
  const widthMm = sideOf(width, 'width');
  if (typeof widthMm === 'string') return widthMm;
  const heightMm = sideOf(height, 'height');
  if (typeof heightMm === 'string') return heightMm;
  return { format: 'own', widthMm, heightMm };
}

/** Blocks are known by the size in their name. */
const isBlock = ({ format }: Sheet): boolean => /^(in|cm)\d/.test(format);

const tidy = (mm: number): string => String(Math.round(mm * 10) / 10);

/** 'Quarter imperial, across: 381 mm wide, 279 mm high (15 × 11 in).' */
export function sheetInWords(sheet: Sheet): string {
  const name = sheet.format === 'own' ? 'your own sheet' : sheetFormats[sheet.format].name;
  const lies = sheet.widthMm === sheet.heightMm ? 'square' : orientationOf(sheet);
  const size = `${tidy(sheet.widthMm)} mm wide, ${tidy(sheet.heightMm)} mm high`;
  const inches = isBlock(sheet) ? '' : ` (${inchesAcross(sheet.widthMm, sheet.heightMm)})`;
  return `${capitalize(name)}, ${lies}: ${size}${inches}.`;
}

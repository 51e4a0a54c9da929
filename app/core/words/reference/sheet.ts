import {
  largestSheetMm,
  orientationOf,
  type Sheet,
  type sheetFormats,
  smallestSheetMm,
} from '../../reference/sheet.ts';
import { capitalize } from '../numbers.ts';
import { inchesAcross, typedMm } from '../units.ts';

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
  const name = sheet.format === 'own' ? 'your own sheet' : formatNames[sheet.format];
  const lies = sheet.widthMm === sheet.heightMm ? 'square' : orientationOf(sheet);
  const size = `${tidy(sheet.widthMm)} mm wide, ${tidy(sheet.heightMm)} mm high`;
  const inches = isBlock(sheet) ? '' : ` (${inchesAcross(sheet.widthMm, sheet.heightMm)})`;
  return `${capitalize(name)}, ${lies}: ${size}${inches}.`;
}

/** What the formats the trade sells are called. */
export const formatNames: Readonly<Record<keyof typeof sheetFormats, string>> = {
  eighth: 'eighth imperial',
  quarter: 'quarter imperial',
  half: 'half imperial',
  full: 'full imperial',
  a5: 'A5',
  a4: 'A4',
  a3: 'A3',
  a2: 'A2',
  in9x12: '9 × 12 in',
  in10x14: '10 × 14 in',
  in12x16: '12 × 16 in',
  cm24x32: '24 × 32 cm',
  cm30x40: '30 × 40 cm',
  cm36x48: '36 × 48 cm',
};

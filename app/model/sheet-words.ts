import { orientationOf, type Sheet, sheetFormats } from './sheet.ts';

/** Imperial papers are sold in inches; their sizes are whole or half ones. */
export const isImperial = (sheet: Sheet): boolean =>
  sheet.format === 'eighth' ||
  sheet.format === 'quarter' ||
  sheet.format === 'half' ||
  sheet.format === 'full';

/** Millimetres as inches to the nearest half: 191 is 7½. */
export function inInches(mm: number): string {
  const halves = Math.round((mm / 25.4) * 2);
  return `${Math.floor(halves / 2)}${halves % 2 ? '½' : ''}`;
}

const tidy = (mm: number): string => String(Math.round(mm * 10) / 10);

/** 'Quarter imperial, across: 381 mm wide, 279 mm high (15 × 11 inches).' */
export function sheetInWords(sheet: Sheet): string {
  const name = sheet.format === 'own' ? 'your own sheet' : sheetFormats[sheet.format].name;
  const lies = sheet.widthMm === sheet.heightMm ? 'square' : orientationOf(sheet);
  const size = `${tidy(sheet.widthMm)} mm wide, ${tidy(sheet.heightMm)} mm high`;
  const inches = isImperial(sheet)
    ? ` (${inInches(sheet.widthMm)} × ${inInches(sheet.heightMm)} inches)`
    : '';
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}, ${lies}: ${size}${inches}.`;
}

import { largestSheetMm, type Sheet, smallestSheetMm } from './sheet.ts';
import { typedNumber } from './typed-number.ts';

/** A typed length of a sheet in mm, or the sentence that says what is wrong with it. */
function sideOf(text: string, name: string): number | string {
  if (text.trim() === '') return `The ${name} is missing: write it in millimetres.`;
  const mm = typedNumber(text);
  if (mm === null)
    return `The ${name} can't be read: write it in millimetres, like 280 or 280.5, and nothing else.`;
  if (mm < smallestSheetMm)
    return `The ${name} is too small: a sheet is at least ${smallestSheetMm} mm each way. Is it in centimetres? Write millimetres.`;
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

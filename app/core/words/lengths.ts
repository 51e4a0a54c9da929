import { lightnessOfOneValue } from '../limits.ts';
import { formatCount } from './numbers.ts';

/** '3 mm', '0.8 mm': finer than half a millimetre no brush tells apart. */
export function widthInWords(mm: number): string {
  if (mm < 0.5) return 'less than half a millimetre';
  return `${mm < 3 ? Number(mm.toFixed(1)) : Math.round(mm)} mm`;
}

/** '4 mm', '12 cm', '1.4 m'. */
export function lengthInWords(mm: number): string {
  if (mm < 100) return `${Math.round(mm)} mm`;
  return mm < 995 ? `${Math.round(mm / 10)} cm` : `${Number((mm / 1000).toFixed(1))} m`;
}

/** A length on the sheet: half millimetres while it is small; 'Under half a millimetre' at the least. */
export function sizeInWords(mm: number): string {
  if (mm < 0.5) return 'Under half a millimetre';
  return mm < 10 ? `${Math.round(mm * 2) / 2} mm` : `${Math.round(mm)} mm`;
}

/** A difference of lightness, L*, in steps of value: '2.1 values', '1 value'. */
export const valuesApart = (contrast: number): string =>
  formatCount(Number((contrast / lightnessOfOneValue).toFixed(1)), 'value');

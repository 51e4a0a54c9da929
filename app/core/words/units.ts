import { typedNumber } from './typed-number.ts';

// Figures with their units, by the platform; both kinds side by side, so that nobody has to set which.

const mmOfInch = 25.4; // exact (international yard and pound agreement, 1959)

const inUnit = (unit: string, fractions = 0): Intl.NumberFormat =>
  new Intl.NumberFormat('en-GB', { style: 'unit', unit, maximumFractionDigits: fractions });
const degreesC = inUnit('celsius', 1);
const degreesF = inUnit('fahrenheit');
const inchFigure = new Intl.NumberFormat('en-GB', { maximumFractionDigits: 1 });

/** Millimetres as a figure in inches, to a tenth, halves as they are said: 191 is '7½', 297 is '11.7'. */
export const inInches = (mm: number): string =>
  inchFigure.format(mm / mmOfInch).replace(/\.5$/, '½');

/** Sides in mm as '15 × 11 in'. */
export const inchesAcross = (widthMm: number, heightMm: number): string =>
  `${inInches(widthMm)} × ${inInches(heightMm)} in`;

export const fahrenheitOf = (celsius: number): number => (celsius * 9) / 5 + 32;
export const celsiusOf = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;

/** '20°C (68°F)'. */
export const warmthInWords = (celsius: number): string =>
  `${degreesC.format(celsius)} (${degreesF.format(fahrenheitOf(celsius))})`;

const mmOfUnit: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  in: mmOfInch,
  inch: mmOfInch,
  inches: mmOfInch,
  '"': mmOfInch,
  '″': mmOfInch,
  '”': mmOfInch,
};

/** A length she typed, mm: '280', '28 cm', '11 in'. Millimetres where she names no unit; null where it can't be read. */
export function typedMm(text: string): number | null {
  const [, figure = '', unit = ''] = /^(.*?)\s*([a-z]+|["″”])?$/i.exec(text.trim()) ?? [];
  const number = typedNumber(figure);
  const perUnit = unit === '' ? 1 : mmOfUnit[unit.toLowerCase()];
  return number === null || perUnit === undefined ? null : number * perUnit;
}

import { lightnessOfOneValue } from '../limits.ts';

const counts = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
const ordinals = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth'];
const plurals = new Intl.PluralRules('en-GB');

/** 'no', 'one' ... 'nine'; '10' from ten on. */
export const spellCount = (count: number): string => counts[count] ?? String(count);

/** 'first' ... 'eighth', of a place from 1; '9th' from nine on. */
export const spellOrdinal = (place: number): string => ordinals[place - 1] ?? `${place}th`;

/** The form of a word that goes with a count: `one` with 1, else `many`. */
export const pluralize = (count: number, one: string, many = `${one}s`): string =>
  plurals.select(count) === 'one' ? one : many;

/** '1 part', '3 parts', '0.5 parts'. */
export const formatCount = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${pluralize(count, one, many)}`;

/** The same where a sentence begins: 'One white', '12 whites'. */
export const openWithCount = (count: number, one: string, many = `${one}s`): string =>
  count === 1 ? `One ${one}` : `${count} ${many}`;

/** All of them: 'the one white', 'the 12 whites'. */
export const formatAll = (count: number, one: string, many = `${one}s`): string =>
  `the ${count === 1 ? 'one' : count} ${pluralize(count, one, many)}`;

/** A whole number of halves in figures: 4 is '2', 15 is '7½'. */
export const halvesInFigures = (halves: number): string =>
  `${Math.floor(halves / 2)}${halves % 2 ? '½' : ''}`;

/** A whole number of halves of something, 1 or more: 'half a value', '1 value', '1½ values'. */
export const formatHalves = (halves: number, one: string, many = `${one}s`): string =>
  halves === 1 ? `half a ${one}` : `${halvesInFigures(halves)} ${pluralize(halves / 2, one, many)}`;

const withAnd = new Intl.ListFormat('en-GB', { type: 'conjunction' });

/** 'a', 'a and b', 'a, b and c'; empty for no words. */
export const joinWords = (words: readonly string[]): string => withAnd.format(words);

const withOr = new Intl.ListFormat('en-GB', { type: 'disjunction' });

/** 'a', 'a or b', 'a, b or c'. */
export const joinWithOr = (words: readonly string[]): string => withOr.format(words);

/** With its first letter large, as a sentence begins. */
export const capitalize = (text: string): string =>
  `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

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

const megabyte = 1e6;

/** What a file takes up: 'under 1 MB', '12 MB'. */
export const megabytesInWords = (bytes: number): string =>
  bytes < megabyte ? 'under 1 MB' : `${Math.round(bytes / megabyte)} MB`;

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

/** A whole number of halves in figures: 4 is '2', 15 is '7½'. */
export const halvesInFigures = (halves: number): string =>
  `${Math.floor(halves / 2)}${halves % 2 ? '½' : ''}`;

/** A whole number of halves of something, 1 or more: 'half a value', '1 value', '1½ values'. */
export const formatHalves = (halves: number, one: string, many = `${one}s`): string =>
  halves === 1 ? `half a ${one}` : `${halvesInFigures(halves)} ${pluralize(halves / 2, one, many)}`;

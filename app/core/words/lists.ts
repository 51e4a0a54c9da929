const withAnd = new Intl.ListFormat('en-GB', { type: 'conjunction' });

/** 'a', 'a and b', 'a, b and c'; empty for no words. */
export const joinWords = (words: readonly string[]): string => withAnd.format(words);

/** With its first letter large, as a sentence begins. */
export const capitalize = (text: string): string =>
  `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

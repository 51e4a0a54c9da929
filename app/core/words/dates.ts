/** One locale for all that is said on screen: sentences are in British English, and so are dates in them. */
const inLocale = (ms: number, style: Intl.DateTimeFormatOptions): string =>
  new Intl.DateTimeFormat('en-GB', style).format(ms);

/** A moment, ms since 1970, as '29 November 2026'. */
export const dateInWords = (ms: number): string => inLocale(ms, { dateStyle: 'long' });

/** '29 November'. */
export const dayInWords = (ms: number): string => inLocale(ms, { day: 'numeric', month: 'long' });

/** '29 November 2026 at 02:24'. */
export const momentInWords = (ms: number): string =>
  inLocale(ms, { dateStyle: 'long', timeStyle: 'short' });

/** '14:05'. */
export const timeInWords = (ms: number): string => inLocale(ms, { timeStyle: 'short' });

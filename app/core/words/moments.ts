/** Moments of the clock on the wall, ms since 1970, in the one language the app speaks. */

const time = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' });
const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', year: 'numeric' });

/** '14:05'. */
export const timeInWords = (wallMs: number): string => time.format(wallMs);

/** '29 November 2026'. */
export const dayInWords = (wallMs: number): string => day.format(wallMs);

/** '29 November 2026, 14:05'. */
export const momentInWords = (wallMs: number): string =>
  `${dayInWords(wallMs)}, ${timeInWords(wallMs)}`;

/** What bands are called on screen, lightest first; numbers are shown on request only. */
const words: Record<number, readonly string[]> = {
  1: ['one tone'],
  2: ['light', 'dark'],
  3: ['light', 'mid', 'dark'],
  4: ['white', 'light', 'mid', 'dark'],
  5: ['white', 'light', 'mid', 'dark', 'darkest'],
  6: ['white', 'light', 'light mid', 'dark mid', 'dark', 'darkest'],
  7: ['white', 'palest', 'light', 'mid', 'dark mid', 'dark', 'darkest'],
};

/** The word for band `band` (1 is the lightest) of `count`. */
export const bandWord = (band: number, count: number): string =>
  words[count]?.[band - 1] ?? `band ${band}`;

/** What a passage is called on screen. */
export const passageWord = (passage: string): string =>
  passage === 'ground' ? 'background' : passage;

/** A share 0..1 in words; what is there but small is not called nothing. */
export const formatPercent = (share: number): string =>
  share > 0 && share < 0.01 ? 'under 1 %' : `${Math.round(share * 100)} %`;

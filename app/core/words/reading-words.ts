import { formatCount, openWithCount } from './numbers.ts';

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

/** The one sentence about a reference that matters most to who wants to paint it. */
export function studySentence({
  warnings,
  bands,
}: {
  /** The most important first. */
  readonly warnings: readonly { readonly text: string }[];
  readonly bands: { readonly length: number };
}): string {
  const first = warnings[0];
  if (first) return first.text;
  return bands.length === 1
    ? 'It is all one tone.'
    : 'A full range: good lights, mid-tones and darks.';
}

type ToChoose = Parameters<typeof studySentence>[0] & {
  readonly masses?: { readonly firstWash: number };
  readonly reserves: { readonly share: number };
};

/** What tells one photo from another when she chooses which to paint: how many values and shapes, and how much white. */
export function choiceSentence(reading: ToChoose): string {
  const { bands, masses, reserves } = reading;
  const values = openWithCount(bands.length, 'value');
  const shapes = masses ? `, ${formatCount(masses.firstWash, 'big shape')}` : '';
  const white = reserves.share > 0 ? `${formatPercent(reserves.share)} of it white` : 'no white';
  return `${studySentence(reading)} ${values}${shapes}, ${white}.`;
}

/** A share 0..1 in words; what is there but small is not called nothing. */
export const formatPercent = (share: number): string =>
  share > 0 && share < 0.01 ? 'under 1 %' : `${Math.round(share * 100)} %`;

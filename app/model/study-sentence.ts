import type { Reading } from './reading.ts';

/** The one sentence about a reference that matters most to who wants to paint it. */
export function studySentence({ warnings, bands }: Reading): string {
  const first = warnings[0];
  if (first) return first.text;
  return bands.length === 1
    ? 'It is all one tone.'
    : 'A full range of values: lights, mids and darks are all there.';
}

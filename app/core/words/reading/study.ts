import type { Reading } from '../../reading/reading.ts';
import { formatCount, openWithCount } from '../numbers.ts';
import { formatPercent } from '../reading-words.ts';
import { warningInWords } from './warnings.ts';

/** The one sentence about a reference that matters most to who wants to paint it. */
export function studySentence({
  warnings,
  bands,
}: {
  /** The most important first. */
  readonly warnings: Reading['warnings'];
  readonly bands: { readonly length: number };
}): string {
  const first = warnings[0];
  if (first) return warningInWords(first);
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

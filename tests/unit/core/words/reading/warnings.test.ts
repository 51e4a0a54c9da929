import { expect, test } from 'vitest';
import type { Reading, ReadingWarning } from '../../../../../app/core/reading/reading.ts';
import { studySentence } from '../../../../../app/core/words/reading/study.ts';
import { bandsWhyInWords, warningInWords } from '../../../../../app/core/words/reading/warnings.ts';
import { whiteWhyInWords } from '../../../../../app/core/words/reading/whites.ts';
import kept from '../../../../fixtures/readings/seed-heads.json';

// A reading as it lies in a store since before readings said codes (own).
const old = kept as unknown as Reading;

test('a reading of ready sentences says them as they are', () => {
  const [sentence] = kept.warnings.map(({ text }) => text);
  expect(sentence).toMatch(/^The camera lost 4 %/);
  expect(old.warnings.map(warningInWords)).toEqual([sentence]);
  expect(studySentence(old)).toBe(sentence);
  expect(bandsWhyInWords(old.bandsWhy)).toBe(kept.bandsWhy);
  expect(whiteWhyInWords('Small: go round it.')).toBe('Small: go round it.');
});

test.each<[ReadingWarning, RegExp]>([
  [{ code: 'few-tones', values: 1 }, /no more than one value:/],
  [{ code: 'few-tones', values: 3 }, /no more than 3 values:/],
  [{ code: 'clipped-light', share: 0.043 }, /^4 % of the photo is blown out/],
  [{ code: 'clipped-dark', share: 0.004 }, /^Under 1 % of the photo is lost/],
  [{ code: 'one-third', share: 0.85, third: 'mids' }, /^85 % .* in the mid tones:/],
  [{ code: 'small-picture' }, /^The photo is very small/],
  [{ code: 'small-picture', share: 0.03 }, /^Of this photo only 3 % is/],
  [{ code: 'small-picture', share: 0.002 }, /^Of this photo less than 1 % is/],
  [{ code: 'merge' }, /^Shapes of different colour meet/],
])('%j', (warning, sentence) => expect(warningInWords(warning)).toMatch(sentence));

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import {
  madeOfInWords,
  measuredOnInWords,
  pigmentsInWords,
  sourceInWords,
} from '../../../../../app/core/words/paint/paint-words.ts';
import { card, cards } from '../../../../support/paint/cards.ts';
import { top } from '../../../house/source-files.ts';

test.each([
  [
    'pb29-ultramarine-blue',
    'Measured from watercolour, though its pigment was told by name only; your tube is likely close.',
  ],
  ['hue-lemon-yellow', 'Measured from watercolour; your tube is likely close.'],
  [
    'pb28-cobalt-blue',
    'Taken from acrylic paint of the same pigment; your tube may differ somewhat.',
  ],
  ['py3-arylide-yellow', 'Estimated from published colours; your tube may differ somewhat.'],
  [
    'pg18-viridian',
    'Estimated from published colours; your tube may differ a good deal: try it on a scrap.',
  ],
  ['ready-sap-green', 'Worked out from its parts; your tube may differ somewhat.'],
])('%s: where its colour comes from, and how far a tube may differ', (id, words) => {
  expect(sourceInWords(card(id))).toBe(words);
});

test('every built-in paint says so, a paint of her own does not', () => {
  for (const each of cards) expect(sourceInWords(each)).toMatch(/; your tube .*\.$/);
  expect(sourceInWords({})).toBeNull();
});

test('what the colours were measured on is told in one sentence, on screen and to who reads about it', () => {
  const sentence = measuredOnInWords(cards);
  expect(sentence).toMatch(/^Of the built-in paints \d+ were measured as watercolour; .*[^.]\.$/);
  const counts = [...sentence.matchAll(/\d+/g)].map(Number);
  expect(counts.reduce((sum, count) => sum + count, 0)).toBe(cards.length);
  for (const page of ['README.md', 'DEVELOPERS.md'])
    expect(readFileSync(join(top, page), 'utf8')).toContain(sentence);
});

test('pigments and parts', () => {
  expect(pigmentsInWords(card('pb29-ultramarine-blue'))).toBe('PB29');
  expect(pigmentsInWords(card('hue-sap-green'))).toBe('mixed tube, pigments not told');
  expect(madeOfInWords(card('ready-sap-green'))).toBe(
    'Made of PG7, PY150 and PBr7; makers differ.',
  );
  expect(madeOfInWords(card('pb29-ultramarine-blue'))).toBeNull();
});

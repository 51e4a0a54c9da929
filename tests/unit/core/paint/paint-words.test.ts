import { expect, test } from 'vitest';
import {
  madeOfInWords,
  pigmentsInWords,
  sourceInWords,
} from '../../../../app/core/paint/paint-words.ts';
import { card, cards } from '../../../support/paint/cards.ts';

test.each([
  ['pb29-ultramarine-blue', 'Measured watercolour; your tube is likely close.'],
  ['pb28-cobalt-blue', 'From acrylic measurements; your tube may differ somewhat.'],
  ['py3-arylide-yellow', 'Estimated; your tube may differ somewhat.'],
  ['pg18-viridian', 'Estimated; your tube may differ a good deal: try it on a scrap.'],
  ['ready-sap-green', 'Reckoned from its parts; your tube may differ somewhat.'],
])('%s: where its colour comes from, and how far a tube may differ', (id, words) => {
  expect(sourceInWords(card(id))).toBe(words);
});

test('every built-in paint says so, a paint of her own does not', () => {
  for (const each of cards) expect(sourceInWords(each)).toMatch(/; your tube .*\.$/);
  expect(sourceInWords({})).toBeNull();
});

test('pigments and parts', () => {
  expect(pigmentsInWords(card('pb29-ultramarine-blue'))).toBe('PB29');
  expect(pigmentsInWords(card('hue-sap-green'))).toBe('mixed tube, pigments not told');
  expect(madeOfInWords(card('ready-sap-green'))).toBe(
    'Made of PG7, PY150 and PBr7; makers differ.',
  );
  expect(madeOfInWords(card('pb29-ultramarine-blue'))).toBeNull();
});

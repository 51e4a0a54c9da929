import { expect, test } from 'vitest';
import {
  closenessInWords,
  offerTitle,
  reachInWords,
} from '../../../../../app/core/words/palette/palette-offer.ts';

const blue = { id: 'b', name: 'indanthrone blue', owned: true, valuesShort: 0 };

// Limits and figures are (own): the docstrings of what is tested say why.
test.each([
  [reachInWords(0, null), ''],
  [reachInWords(0.2, null), ''],
  [reachInWords(0.82), 'Falls short of the darkest darks by 0.8 values.'],
  [
    reachInWords(0.82, blue),
    'Falls short of the darkest darks by 0.8 values; indanthrone blue would close it.',
  ],
  [
    reachInWords(1.02, { ...blue, owned: false }),
    'Falls short of the darkest darks by 1 value; indanthrone blue (not in your box) would close it.',
  ],
  [
    reachInWords(2, { ...blue, valuesShort: 0.5 }),
    'Falls short of the darkest darks by 2.0 values; indanthrone blue would bring it to 0.5 values.',
  ],
  [
    reachInWords(2, null),
    'Falls short of the darkest darks by 2.0 values. No paint of the list helps: plan for lighter darks.',
  ],
])('%s', (words, expected) => {
  expect(words).toBe(expected);
});

test.each([
  [1, null, 'The picture’s colours as far as the eye can tell.'],
  [4, 4.2, 'Very close to the picture’s colours, as now.'],
  [4, 5, 'Very close to the picture’s colours: a little closer than now.'],
  [9, 4, 'Near the picture’s colours, some visibly different: less accurate than now.'],
  [20, null, 'The picture’s values, colours of its own.'],
])('%f against %s', (mean, now, expected) => {
  expect(closenessInWords(mean, now)).toBe(expected);
});

test('beside her own choice the search is named as such', () => {
  expect(offerTitle('nearest')).toBe('What the app would choose');
  expect(offerTitle('fewest')).toBe('Fewest paints');
});

import { expect, test } from 'vitest';
import {
  lengthInWords,
  sizeInWords,
  valuesApart,
  widthInWords,
} from '../../../../app/core/words/numbers.ts';

// Limits and figures are (own): the docstrings of what is tested say why.
test('measures in words', () => {
  expect([10, 21.4, 0].map(valuesApart)).toEqual(['1 value', '2.1 values', '0 values']);
  expect([0.2, 0.84, 2.96, 11.6].map(widthInWords)).toEqual([
    'less than half a millimetre',
    '0.8 mm',
    '3 mm',
    '12 mm',
  ]);
  expect([4.4, 99.4, 100, 994, 6930].map(lengthInWords)).toEqual([
    '4 mm',
    '99 mm',
    '10 cm',
    '99 cm',
    '6.9 m',
  ]);
});

test.each([
  [0.3, 'Under half a millimetre'],
  [0.8, '1 mm'],
  [2.3, '2.5 mm'],
  [9.8, '10 mm'],
  [31.4, '31 mm'],
])('%d mm in words', (mm, words) => {
  expect(sizeInWords(mm)).toBe(words);
});

import { expect, test } from 'vitest';
import { sheetOf } from '../../../../app/core/reference/sheet.ts';
import { ownSheet, sheetInWords } from '../../../../app/core/words/reference/sheet.ts';

test('comma and point both mean the decimal sign', () => {
  expect(ownSheet('280,5', '200.25')).toEqual({ format: 'own', widthMm: 280.5, heightMm: 200.25 });
});

test.each([
  ['28', '200', /width is too small.*50 mm/],
  ['280', '2000,5', /height is too large.*2000 mm/],
  ['', '200', /width is missing/],
  ['280', 'a lot', /height can't be read/],
])('%s by %s is refused with a sentence', (width, height, sentence) => {
  expect(ownSheet(width, height)).toMatch(sentence);
});

test('the limits themselves are taken', () => {
  expect(ownSheet('50', '2000')).toMatchObject({ widthMm: 50, heightMm: 2000 });
});

test('a sheet in words, in inches too; blocks have their size in their name', () => {
  expect(sheetInWords(sheetOf('quarter', 'across'))).toBe(
    'Quarter imperial, across: 381 mm wide, 279 mm high (15 × 11 in).',
  );
  expect(sheetInWords(sheetOf('a5', 'upright'))).toBe(
    'A5, upright: 148 mm wide, 210 mm high (5.8 × 8.3 in).',
  );
  expect(sheetInWords(sheetOf('in9x12', 'across'))).toBe(
    '9 × 12 in, across: 305 mm wide, 229 mm high.',
  );
  expect(sheetInWords({ format: 'own', widthMm: 200, heightMm: 200 })).toContain('square: 200 mm');
});

test('her own sheet may be typed in centimetres or inches', () => {
  expect(ownSheet('28 cm', '11 in')).toEqual({ format: 'own', widthMm: 280, heightMm: 279.4 });
});

// ISO 216 (2007), trimmed sizes of the A series, mm; imperial: full sheet 22 x 30 inches, halved (common practice).
test.each([
  ['a5', 148, 210],
  ['a4', 210, 297],
  ['a3', 297, 420],
  ['a2', 420, 594],
  ['eighth', 191, 279],
  ['quarter', 279, 381],
  ['half', 381, 559],
  ['full', 559, 762],
] as const)('%s is %i by %i mm, either way', (format, shortMm, longMm) => {
  expect(sheetOf(format, 'upright')).toEqual({ format, widthMm: shortMm, heightMm: longMm });
  expect(sheetOf(format, 'across')).toEqual({ format, widthMm: longMm, heightMm: shortMm });
});

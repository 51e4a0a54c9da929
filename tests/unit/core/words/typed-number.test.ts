import fc from 'fast-check';
import { expect, test } from 'vitest';
import { typedNumber } from '../../../../app/core/words/typed-number.ts';

test.each([
  ['12,5', 12.5],
  ['12.5', 12.5],
  [' 280 ', 280],
  ['0,5', 0.5],
  ['.5', 0.5],
  ['7.', 7],
  ['1 234,5', 1234.5],
  ['1\u202f234', 1234],
  ['1’234.5', 1234.5],
  ['\u22123', -3],
  ['٢٨٠٫٥', 280.5],
])('%s is %d', (text, value) => {
  expect(typedNumber(text)).toBe(value);
});

test.each([
  '',
  ' ',
  ',',
  '1.234,5',
  '1,234,567',
  '12 5',
  '280 mm',
  '1e3',
  'Infinity',
  '0x10',
  '--1',
])('%j is no number', (text) => {
  expect(typedNumber(text)).toBeNull();
});

// A-LOC-2: what the app or the device shows must be read back.
test('any value with either sign comes back', () => {
  const values = fc.integer({ min: -20000, max: 20000 }).map((tenths) => tenths / 10);
  fc.assert(
    fc.property(values, (value) => {
      expect(typedNumber(String(value))).toBe(value);
      expect(typedNumber(String(value).replace('.', ','))).toBe(value);
      for (const language of ['fr-FR', 'de-CH', 'sv-SE'])
        expect(typedNumber(value.toLocaleString(language))).toBe(value === 0 ? 0 : value);
    }),
    { seed: 7 },
  );
});

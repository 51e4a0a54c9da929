import { expect, test } from 'vitest';
import { valueOfLightness } from '../../../../../app/core/colour/lightness.ts';
import { valuesShort } from '../../../../../app/core/palette/offers/palette-gaps.ts';
import { describeLoss } from '../../../../../app/core/words/palette/palette-gaps.ts';

const family = (name: string, furtherOff: number, share = 0.3) => ({ name, share, furtherOff });

// Limits and figures are (own): the docstrings of what is tested say why.
test.each([
  [0, 0, [], 'little changes'],
  [0, 0.5, [family('ochre', 1)], 'all colours are a little less accurate'],
  [1.37, 0, [], 'the darks end 1.4 values lighter'],
  [0.2, 3, [family('dull green', 3)], 'the dull green is a bit off'],
  [
    1.4,
    5,
    [family('ochre', 4), family('dull green', 8)],
    'the darks end 1.4 values lighter; the dull green and the ochre are clearly off',
  ],
  [0, 9, [family('brown', 14)], 'you cannot mix the brown'],
  [0, 9, [family('brown', 14), family('grey', 13)], 'you cannot mix the brown or the grey'],
  // Too little of the sheet to be worth a word.
  [0, 0.1, [family('violet', 20, 0.01)], 'little changes'],
])('darks %f lighter, %f further off: %s', (darksLighter, furtherOff, families, words) => {
  expect(describeLoss({ darksLighter, furtherOff, families })).toBe(words);
});

test('of many families the two that lose most over the sheet are named', () => {
  const families = [family('a', 3, 0.1), family('b', 3, 0.5), family('c', 5, 0.2), family('d', 2)];
  const words = describeLoss({ darksLighter: 0, furtherOff: 2, families });
  expect(words).toBe('the b and the c are a bit off');
});

test('without the only paint there is none', () => {
  expect(describeLoss(null)).toBe('nothing is left to paint with');
});

test('a darkest mix is short by Munsell values, from where it can be seen', () => {
  // Lightness in steps of 10 L* is about a Munsell value each (ASTM D1535, 2014): 30 L* are 2.9, 20 L* 1.95.
  expect(valuesShort(30, 20)).toBeCloseTo(valueOfLightness(30) - valueOfLightness(20), 9);
  expect(valuesShort(30, 20)).toBeGreaterThan(0.8);
  expect(valuesShort(20, 30)).toBe(0);
  expect(valuesShort(20, 20)).toBe(0);
  expect(valuesShort(20.5, 20)).toBe(0);
});

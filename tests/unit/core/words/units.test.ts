import { expect, test } from 'vitest';
import {
  celsiusOf,
  fahrenheitOf,
  inchesAcross,
  inInches,
  typedMm,
  warmthInWords,
} from '../../../../app/core/words/units.ts';

// An inch is 25.4 mm (international yard and pound agreement, 1959); sizes of imperial papers: full sheet 22 x 30
// inches, halved each time (common practice, no source); A4 is 210 x 297 mm (ISO 216:2007).
test('inches to a tenth, halves as they are said', () => {
  expect([762, 559, 381, 279, 191].map(inInches)).toEqual(['30', '22', '15', '11', '7½']);
  expect(inchesAcross(297, 210)).toBe('11.7 × 8.3 in');
});

// Water freezes at 32 and boils at 212 degrees Fahrenheit (the scale's own fixed points); -40 is the same on both.
test('degrees Celsius and Fahrenheit side by side', () => {
  expect([0, 100, -40].map(fahrenheitOf)).toEqual([32, 212, -40]);
  expect([32, 212, -40].map(celsiusOf)).toEqual([0, 100, -40]);
  expect(warmthInWords(20)).toBe('20°C (68°F)');
  expect(warmthInWords(18.5)).toBe('18.5°C (65°F)');
});

test.each([
  ['280', 280],
  ['280,5', 280.5],
  ['28 cm', 280],
  ['28cm', 280],
  ['11 in', 279.4],
  ['11"', 279.4],
  ['12 Inches', 304.8],
  ['300 mm', 300],
])('a typed length %s is %d mm', (text, mm) => {
  expect(typedMm(text)).toBeCloseTo(mm, 6);
});

test.each(['a lot', '11 feet', '', 'cm', '11 x 15 in'])('%s is no length', (text) => {
  expect(typedMm(text)).toBeNull();
});

import { expect, it } from 'vitest';
import {
  hoursInWords,
  measuredHours,
  measuredMinutes,
  minutesInWords,
  rangeInWords,
} from '../../../../app/core/words/minutes.ts';

it.each([
  [7, '7 min'],
  [44, '45 min'],
  [58, '1 h'],
  [101, '1 h 40 min'],
  [180, '3 h'],
])('%f minutes are said as %s', (minutes, said) => {
  expect(hoursInWords(minutes)).toBe(said);
});

it('a span of time', () => {
  expect(rangeInWords([69, 118])).toBe('1 h 10 min to 2 h');
});

it('no line breaks inside a range of minutes', () => {
  // A line may break after an en dash, not beside a word joiner (Unicode Standard Annex 14, rules LB21 and LB11).
  expect(minutesInWords([77, 186])).toBe('77–\u2060186 min');
  expect(minutesInWords([90, 180])).toBe('1.5–\u20603 h');
  expect(minutesInWords([0.5, 12])).toBe('½–\u206012 min');
  expect([minutesInWords([0, 0]), minutesInWords([0.5, 1])]).toEqual(['no time', 'up to a minute']);
});

it('measured times are said to the minute', () => {
  expect([0.4, 1, 59.4].map(measuredMinutes)).toEqual(['under 1 min', '1 min', '59 min']);
  expect([0.4, 59.4, 60, 260.2].map(measuredHours)).toEqual([
    'under 1 min',
    '59 min',
    '1 h 0 min',
    '4 h 20 min',
  ]);
});

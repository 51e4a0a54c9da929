import { expect, test } from 'vitest';
import {
  clockFace,
  timeOver,
  waitWords,
} from '../../../../../app/core/words/session/wait-words.ts';

// Limits of words: own.
const minute = 60_000;
const noon = new Date(2031, 4, 5, 12, 0).getTime();
const left = (low: number, likely: number, high: number, over = 0) => ({
  lowMs: low * minute,
  likelyMs: likely * minute,
  highMs: high * minute,
  overMs: over * minute,
});

test('one figure leads, then when to look; the range is the precise part', () => {
  expect(waitWords(left(30, 48.1, 77), noon)).toEqual({
    name: 'Bone dry in about',
    lead: '50 min',
    look: 'Look from 30 min on.',
    range: '30:00 to 1:17:00, from 12:30 to 13:17',
  });
});

test('once it is time to look that is said, and the latest end', () => {
  expect(waitWords(left(0, 18, 52.5), noon)).toMatchObject({
    lead: '18 min',
    look: 'Look now. Dry within 55 min at the latest.',
    range: '52:30 at the most, by 12:52',
  });
  expect(waitWords(left(0, 0, 4), noon).lead).toBe('any minute');
});

test('past the latest end nothing is promised, and nothing is negative', () => {
  expect(waitWords(left(0, 0, 0, 6), noon)).toEqual({
    name: 'Bone dry by now',
    lead: 'over by 6 min',
    look: 'Look now.',
    range: '0:00 over by 6 min',
  });
});

test('a clock face rounds up to the second, hours in front where there are any', () => {
  expect([clockFace(449_200), clockFace(4_620_000), clockFace(0)]).toEqual([
    '7:30',
    '1:17:00',
    '0:00',
  ]);
});

// Where minutes turn into hours and days: (own).
test.each([
  [minute - 1, 'just over'],
  [6 * minute, 'over by 6 min'],
  [119 * minute, 'over by 119 min'],
  [121 * minute, 'over by 2 h'],
  [47 * 60 * minute, 'over by 47 h'],
  [30 * 24 * 60 * minute, 'over by 30 days'],
])('%i ms past its end', (ms, words) => expect(timeOver(ms)).toBe(words));

import { expect, test } from 'vitest';
import { timeOver } from '../../../../app/screens/easel/easel-clock.tsx';

const minute = 60_000;

// Where minutes turn into hours and days: (own).
test.each([
  [minute - 1, 'just over'],
  [6 * minute, 'over by 6 min'],
  [119 * minute, 'over by 119 min'],
  [121 * minute, 'over by 2 h'],
  [47 * 60 * minute, 'over by 47 h'],
  [30 * 24 * 60 * minute, 'over by 30 days'],
])('%i ms past its end', (ms, words) => expect(timeOver(ms)).toBe(words));

import { expect, test } from 'vitest';
import { dayInWords, momentInWords, timeInWords } from '../../../../app/core/words/moments.ts';

test('moments are told in one language, whatever the device speaks', () => {
  const moment = new Date(2031, 4, 5, 9, 7).getTime();
  expect(timeInWords(moment)).toBe('09:07');
  expect(dayInWords(moment)).toBe('5 May 2031');
  expect(momentInWords(moment)).toBe('5 May 2031, 09:07');
});

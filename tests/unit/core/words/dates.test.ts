import { expect, test } from 'vitest';
import {
  dateInWords,
  dayInWords,
  momentInWords,
  timeInWords,
} from '../../../../app/core/words/dates.ts';

/** In the time zone of whoever runs this. */
const moment = new Date(2026, 10, 29, 2, 24).getTime();

test('dates are written as the sentences round them, whatever the language of the device', () => {
  expect(dateInWords(moment)).toBe('29 November 2026');
  expect(dayInWords(moment)).toBe('29 November');
  expect(momentInWords(moment)).toMatch(/^29 November 2026.* 02:24$/);
});

test('times of day', () => {
  expect(timeInWords(moment)).toBe('02:24');
});

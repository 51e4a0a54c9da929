import { expect, test } from 'vitest';
import { arrivalInWords, copyReminder } from '../../../../app/core/words/copies.ts';

// Counts (own).
test('one painting and several are told in their own forms', () => {
  expect(copyReminder(1)).toBe('One painting has changed since you last kept a copy.');
  expect(copyReminder(2)).toBe('2 paintings have changed since you last kept a copy.');
  expect(copyReminder(null)).toBe('Your paintings are on this device only.');
  expect(arrivalInWords('new', ['Seed heads'])).toBe('Seed heads: not here yet, comes back.');
  expect(arrivalInWords('later here', ['A', 'B'])).toMatch(/^A and B: .* They stay as here;/);
});

test('more than six titles are counted', () => {
  const titles = [...'ABCDEFGH'];
  expect(arrivalInWords('same', titles)).toBe(
    'A, B, C, D, E, F and 2 more: here already, the same.',
  );
});

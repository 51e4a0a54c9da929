import { expect, test } from 'vitest';
import { onTheSheet, rangeIn, toneRange } from '../../../../app/core/reading/tone-range.ts';

test('there and back the range is the same, and opened up it reaches the darkest paint', () => {
  const asItIs = toneRange('photographed', 40, 90, 15, 95); // a pale picture: its dark is raised
  expect(asItIs.dark).toBeCloseTo(38, 9);
  const opened = rangeIn('opened', asItIs);
  expect(onTheSheet(opened, 40)).toBe(15);
  expect(rangeIn('photographed', opened)).toEqual(asItIs);
});

import { expect, test } from 'vitest';
import { darkestInSteps } from '../../../workers/darkest-in-steps.ts';
import { darkestOfBox } from '../../../workers/kernels/palette/darkest-of.ts';

test('worked out in steps the darkest of the box is the same', async () => {
  let pauses = 0;
  const darkest = await darkestInSteps(async () => {
    pauses += 1;
  });
  expect(darkest).toBe(darkestOfBox());
  expect(pauses).toBeGreaterThan(5);
});

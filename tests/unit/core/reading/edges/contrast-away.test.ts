import { expect, test } from 'vitest';
import { contrastAway } from '../../../../../app/core/reading/edges/contrast-away.ts';
import { uprightEdge } from '../../../../support/reading/made-edge.ts';

// The picture is made by the test itself.
/** 100 x 50 px: L* 80 left of the middle and 40 right of it, but for a strip of L* 76 just right of it. */
const [width, height] = [100, 50];
const values = Uint8Array.from({ length: width * height }, (_, i) => {
  const x = i % width;
  return Math.round(2.55 * (x < 50 ? 80 : x < 54 ? 76 : 40));
});
const map = { width, height, values };

test('beside a thin strip the sides are alike, some way off they are not', () => {
  expect(contrastAway(uprightEdge(0.5), map, 0.02)).toBeCloseTo(4, 0);
  expect(contrastAway(uprightEdge(0.5), map, 0.08)).toBeCloseTo(40, 0);
});

test('null without room on both sides, or without a course', () => {
  expect(contrastAway(uprightEdge(0.01), map, 0.08)).toBeNull();
  expect(contrastAway({ path: [] }, map, 0.02)).toBeNull();
});

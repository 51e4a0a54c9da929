import { expect, test } from 'vitest';
import { settlePlace } from '../../../../app/core/compare/settle-place.ts';

// A square sheet whose picture tells of a place in one direction by how far it lies from a line: there to 1e-4 of half
// the sheet, and worse by as much as `slope` a half sheet away from it. Reckoned by hand (own).
const size = { width: 200, height: 200 };
const toPhoto = Float64Array.of(1, 0, 0, 0, 1, 0, 0, 0, 1);
const [known, slope] = [1e-4, 0.01];

/** Variance of a step to the right: known^2 + slope^2 (share - at)^2, a share across the sheet or down it. */
function doubtOf(at: number, isAcross: boolean): number {
  const covariance = new Float64Array(64);
  const from = [0, 0, -at * slope, 0, 0, 0, 0, 0];
  from[isAcross ? 0 : 1] = slope;
  for (let i = 0; i < 8; i++)
    for (let j = 0; j < 8; j++)
      covariance[8 * i + j] =
        Number(from[i]) * Number(from[j]) + (i === 2 && j === 2 ? known ** 2 : 0);
  return settlePlace({ toPhoto, covariance }, [], size).doubt;
}

test.each([
  ['left', -0.8, true],
  ['right', 0.8, true],
  ['top', -0.8, false],
  ['bottom', 0.8, false],
])(
  'a picture surest at its %s is trusted no more than to a thousandth there, and the less elsewhere',
  (_, at, isAcross) => {
    // The worst corner lies 1.8 half sheets away from what is known best; all is widened alike.
    const corner = Math.hypot(known, 1.8 * slope) / 2;
    expect(doubtOf(at, isAcross)).toBeCloseTo(corner * (0.0016 / known), 6);
  },
);

test('a picture that is less sure than that is left as it is', () => {
  const covariance = new Float64Array(64);
  for (const i of [2, 5]) covariance[9 * i] = 0.01 ** 2;
  expect(settlePlace({ toPhoto, covariance }, [], size)).toEqual({
    toPhoto,
    doubt: expect.closeTo(0.005, 9),
    agreeing: 0,
    contradicting: 0,
  });
});

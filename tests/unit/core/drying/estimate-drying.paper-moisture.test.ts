import { expect, test } from 'vitest';
import { activityOf, moistureOf } from '../../../../app/core/drying/estimate-drying.ts';
import vectors from '../../../fixtures/drying-vectors.json' with { type: 'json' };

// Own computation apart from this code. The form: GAB, found to fit handmade paper by Vieira, M. G. A., Rocha, S. C. S.,
// Braz. J. Chem. Eng. 25(2), 2008; its coefficients are fitted to moisture figures from memory.
test.each(vectors.gab)('paper in air of $aw holds $X g/g', ({ aw, X }) => {
  expect(moistureOf(aw)).toBeCloseTo(X, 3);
});

test('activity is the inverse of moisture', () => {
  for (let activity = 0; activity <= 1.0001; activity += 0.05) {
    expect(activityOf(moistureOf(activity))).toBeCloseTo(Math.min(1, activity), 9);
  }
  expect(activityOf(0.5)).toBe(1);
  expect(activityOf(-1)).toBe(0);
});

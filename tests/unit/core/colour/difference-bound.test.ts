import { expect, it } from 'vitest';
import { colourDifference } from '../../../../app/core/colour/ciede2000.ts';
import { DifferenceBound } from '../../../../app/core/colour/difference-bound.ts';
import type { Lab } from '../../../../app/core/colour/lab.ts';
import { seeded } from '../../../support/seeded.ts';

// Shares ruled out are (own).
it('gives the difference itself or rules a colour out that is further off, most of those, in no more than a glance', () => {
  const random = seeded(11);
  const colour = (): Lab => [random() * 100, random() * 160 - 80, random() * 160 - 80];
  let [further, ruledOut, quickly] = [0, 0, 0];
  for (let i = 0; i < 400; i++) {
    const one = colour();
    const bound = new DifferenceBound(one);
    for (let n = 0; n < 50; n++) {
      // Half of them near by, where the bound is decided.
      const [l, a, b] = colour();
      const two: Lab = n % 2 ? [l, a, b] : [one[0] + l / 9, one[1] + a / 9, one[2] + b / 9];
      const difference = colourDifference(one, two);
      expect(bound.differenceUpTo(difference, ...two)).toBe(difference);
      expect(bound.differenceUpTo(1000, ...two)).toBe(difference);
      further++;
      if (bound.differenceUpTo(difference / 1.5, ...two) === Number.POSITIVE_INFINITY) ruledOut++;
      const quick = bound.leastSquared(...two, Math.hypot(two[1], two[2]));
      expect(quick).toBeLessThanOrEqual(difference ** 2 + 1e-9);
      if (quick > (difference / 2) ** 2) quickly++;
    }
  }
  expect(ruledOut / further).toBeGreaterThan(0.9);
  expect(quickly / further).toBeGreaterThan(0.7);
});

import { expect, test } from 'vitest';
import { concentrationOf, loadOf } from '../../../../app/core/paint/consistency.ts';
import { thinningFor } from '../../../../app/core/paint/thinning.ts';
import { thinningInWords } from '../../../../app/core/words/paint/mix-words.ts';

/** By volumes: of `puddle` parts of 1 + 1 / c each 1 / (1 + 1 / c) is paint. */
function concentrationAfter(concentration: number, puddle: number, water: number): number {
  const paint = puddle / (1 + 1 / concentration);
  return paint / (puddle - paint + water);
}

// Limits and figures are (own): the docstrings of what is tested say why.
test.each([0.02, 0.1, 0.4, 2, Number.POSITIVE_INFINITY])(
  'a puddle of concentration %s is thinned to any weaker load within a tenth',
  (concentration) => {
    const full = loadOf(concentration);
    for (const share of [0.94, 0.8, 0.6, 0.5, 0.33, 0.2, 0.1, 0.07]) {
      const thinning = thinningFor(concentration, share * full);
      if (!thinning) throw new Error(`as it is for ${share}`);
      const { puddle, water } = thinning;
      const after = loadOf(concentrationAfter(concentration, puddle, water));
      expect(Math.abs(after / (share * full) - 1), `${share}`).toBeLessThan(0.1);
    }
  },
);

test('as it is for its own load, for a stronger one, and for what no hand tells apart', () => {
  for (const share of [1, 1.3, 0.98]) expect(thinningFor(0.1, share * loadOf(0.1))).toBeNull();
});

test('equal parts halve what is in the water', () => {
  // 1 ml of paint in 10 of water, and as much water again, 11 ml: 1 to 21.
  expect(thinningFor(0.1, loadOf(1 / 21))).toEqual({ puddle: 1, water: 1 });
  expect(concentrationOf(loadOf(1 / 21))).toBeCloseTo(1 / 21, 6);
});

test('in words', () => {
  expect(thinningInWords({ puddle: 2, water: 1 })).toBe('two parts of it with one of water');
  expect(thinningInWords({ puddle: 1, water: 12 })).toBe('one part of it with 12 of water');
});

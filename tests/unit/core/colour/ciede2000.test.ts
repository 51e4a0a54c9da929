import { differenceCiede2000 } from 'culori/fn';
import { describe, expect, it } from 'vitest';
import { colourDifference } from '../../../../app/core/colour/ciede2000.ts';
import type { Lab } from '../../../../app/core/colour/lab.ts';
import sharma from '../../../fixtures/ciede2000-sharma-2005.json';

const oracle = differenceCiede2000();
const lab65 = ([l, a, b]: Lab) => ({ mode: 'lab65', l, a, b }) as const;

/** Seeded, so that a failure can be seen again. */
function randoms(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

describe('CIEDE2000', () => {
  // Sharma, Wu, Dalal (2005), Color Res. Appl. 30, 21-30: all 34 pairs.
  it.each(sharma.pairs)('pair $pair', ({ lab1, lab2, dE00 }) => {
    const one = lab1 as unknown as Lab;
    const two = lab2 as unknown as Lab;
    expect(colourDifference(one, two)).toBeCloseTo(dE00, 4);
    expect(colourDifference(two, one)).toBeCloseTo(dE00, 4);
  });

  it('agrees with culori on seeded colours', () => {
    const random = randoms(7);
    for (let i = 0; i < 5000; i++) {
      const one: Lab = [random() * 100, random() * 160 - 80, random() * 160 - 80];
      const two: Lab = [random() * 100, random() * 160 - 80, random() * 160 - 80];
      const wanted = oracle(lab65(one), lab65(two));
      expect(Math.abs(colourDifference(one, two) - wanted)).toBeLessThan(1e-6);
    }
  });

  it('passes hue 0 without a jump (A-NUM-7)', () => {
    const up: Lab = [50, 44.56, 6.26];
    const down: Lab = [50, 44.56, -6.26];
    expect(Math.abs(colourDifference(up, down) - 6.608)).toBeLessThan(0.001);
    expect(colourDifference(up, down)).toBe(colourDifference(down, up));
    expect(colourDifference(up, up)).toBe(0);
    expect(colourDifference([50, 0, 0], up)).toBeGreaterThan(0);
    expect(colourDifference([50, 0, 0], [50, 0, 0])).toBe(0);
  });

  it('stays finite at exactly opposite hues (A-NUM-8)', () => {
    for (const step of [-1e-4, 0, 1e-4]) {
      const far = colourDifference([50, 60, 40], [50, -60, -40 + step]);
      expect(far).toBeGreaterThan(30);
      expect(far).toBeLessThan(150);
    }
  });
});

import { describe, expect, test } from 'vitest';
import {
  applyPace,
  geometricMiddle,
  type Lesson,
  learnPace,
  teaches,
} from '../../../../app/core/drying/learn-pace.ts';
import { usualPaper } from '../../../../app/core/drying/paper-choice.ts';
import { paceInWords } from '../../../../app/core/words/drying/drying-words.ts';

describe('what taps teach', () => {
  const what = { clock: 'dry', paper: usualPaper, wash: 'wash' } as const;
  const taps = (...ratios: readonly number[]): Lesson[] =>
    ratios.map((ratio, n) => ({ ...what, kind: 'tap', ratio, from: `${n}` }));

  // Figures are (own): the docstrings of what is tested say why.
  test('more than seven times as long she slept, under 0.15 of it she tapped through', () => {
    expect([0.14, 0.15, 7, 7.1].map(teaches)).toEqual([false, true, true, false]);
    expect(learnPace(taps(8, 0.1, 2), what).taps).toBe(1);
  });

  test('the last twenty count', () => {
    const early = Array.from({ length: 12 }, () => 0.5);
    const late = Array.from({ length: 20 }, () => 2);
    expect(learnPace(taps(...early, ...late), what)).toMatchObject({ taps: 20 });
    expect(learnPace(taps(...early, ...late), what).factor).toBeCloseTo(2, 9);
  });

  test('scatter begins at 0.3, which counts for two taps', () => {
    expect(learnPace([], what).scatter).toBeCloseTo(0.3, 9);
    // Three taps that agree, and one vote for as reckoned: (2 x 0.09 + 0) / 5.
    expect(learnPace(taps(2, 2, 2), what).scatter).toBeCloseTo(Math.sqrt(0.18 / 5), 9);
    // One tap of e: the middle lies half way, so it strays by a half.
    expect(learnPace(taps(Math.E), what).scatter).toBeCloseTo(Math.sqrt((0.18 + 0.25) / 3), 9);
  });

  test('with n taps her own time counts n to 1 beside the range of the untaught', () => {
    const pace = { factor: 2, taps: 3, scatter: 0.2 };
    // Nine of ten lie within 1.6 deviations, of which one is the next tap's own.
    const half = 1.6 * 0.2 * Math.sqrt(4 / 3);
    const [low, high] = applyPace([5, 40], [8, 18], pace);
    expect(low).toBeCloseTo((24 * Math.exp(-half)) ** 0.75 * 5 ** 0.25, 9);
    expect(high).toBeCloseTo((24 * Math.exp(half)) ** 0.75 * 40 ** 0.25, 9);
    // An end at zero stands for a fiftieth of the other.
    expect(applyPace([0, 40], [8, 18], pace)[0]).toBeCloseTo(
      (24 * Math.exp(-half)) ** 0.75 * 0.8 ** 0.25,
      9,
    );
    expect(geometricMiddle([4, 9])).toBeCloseTo(6, 9);
    expect(geometricMiddle([0, 10])).toBeCloseTo(Math.sqrt(2), 9);
  });

  test('is said as a number from a twentieth on', () => {
    const said = (factor: number) => paceInWords('dry', 'wash', { factor, taps: 2, scatter: 0.2 });
    expect(said(1.04)).toMatch(/as reckoned, from 2 taps/);
    expect(said(1.06)).toMatch(/in 1.1 times the time reckoned/);
    expect(said(0.96)).toMatch(/dry as reckoned/);
    expect(said(0.8)).toMatch(/1.3 times as fast as reckoned/);
  });
});

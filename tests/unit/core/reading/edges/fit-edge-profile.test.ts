import { describe, expect, test } from 'vitest';
import {
  createCrossings,
  type SideCrossings,
} from '../../../../../app/core/reading/edges/edge-profile.ts';
import { EdgeProfileFit } from '../../../../../app/core/reading/edges/fit-edge-profile.ts';
import { seeded } from '../../../../support/reading/seeded.ts';

/** The normal distribution up to z (Abramowitz, Stegun, 'Handbook of Mathematical Functions', 1964, 26.2.17). */
function normal(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const tail =
    (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return z >= 0 ? 1 - tail : tail;
}

/** 32 samples, the contour between the two in the middle, at 15.5: steps blurred by `sigma` samples. */
const profileOf = (
  base: number,
  sigma: number,
  ...steps: readonly (readonly [at: number, rise: number])[]
) =>
  Float64Array.from({ length: 32 }, (_, k) =>
    steps.reduce((sum, [at, rise]) => sum + rise * normal((k - at) / sigma), base),
  );

const crossings = (
  distances: readonly number[] = [],
  room = 16,
  stale: readonly number[] = [],
): SideCrossings => {
  const found = createCrossings();
  found.distances.set([...distances, ...stale]);
  found.count = distances.length;
  found.room = room;
  return found;
};

function fitOf(values: Float64Array, before = crossings(), after = crossings()) {
  const fit = new EdgeProfileFit();
  fit.read(values, before, after);
  const { contrast, sigma, isWhole } = fit;
  return { contrast, sigma, isWhole };
}

describe('one edge in a profile', () => {
  test.each([
    [20, 1],
    [20, 2],
    [-20, 2],
    [8, 3],
  ])('a rise of %i L*, sigma %i: told as made', (rise, sigma) => {
    const found = fitOf(profileOf(40, sigma, [15.5, rise]));
    expect(found.contrast).toBeCloseTo(Math.abs(rise), 1);
    expect(Math.abs(found.sigma / sigma - 1)).toBeLessThan(0.03);
    expect(found.isWhole).toBe(true);
  });

  test('so wide that it does not end within the profile is not whole', () => {
    expect(fitOf(profileOf(40, 7, [15.5, 20])).isWhole).toBe(true);
    expect(fitOf(profileOf(40, 9, [15.5, 20])).isWhole).toBe(false);
  });

  test('far from its contour is not whole', () => {
    expect(fitOf(profileOf(40, 1, [17.5, 20])).isWhole).toBe(true);
    expect(fitOf(profileOf(40, 1, [20.5, 20])).isWhole).toBe(false);
  });

  test('near the end of the picture only what is in it counts', () => {
    // The picture ends 6 samples after the contour; beyond it the profile repeats what does not exist.
    const values = profileOf(40, 1, [15.5, 20]).map((value, k) => (k > 21 ? 5 : value));
    const found = fitOf(values, crossings(), crossings([], 6));
    expect(found.contrast).toBeCloseTo(20, 1);
    expect(Math.abs(found.sigma - 1)).toBeLessThan(0.05);
    expect(found.isWhole).toBe(true);
  });
});

test.each([16, 18])(
  'of a side whose next contour is %i samples away half the way counts, and no more',
  (away) => {
    const last = 15.5 + (away + 1) / 2; // the samples have a width of their own
    const sigmaOf = (spoiltFrom: number) => {
      const values = profileOf(40, 1, [15.5, 20]).map((value, k) => (k >= spoiltFrom ? 5 : value));
      return fitOf(values, crossings(), crossings([away])).sigma;
    };
    expect(Math.abs(sigmaOf(last + 1) - 1)).toBeLessThan(0.05);
    expect(sigmaOf(last)).toBeLessThan(0.8);
  },
);

describe('with another edge beside it', () => {
  test.each([
    ['rising on', 15],
    ['falling back', -15],
  ])('%s: the contrast is its own', (_, next) => {
    const after = fitOf(profileOf(40, 1, [15.5, 20], [24.5, next]), crossings(), crossings([9]));
    expect(after.contrast).toBeCloseTo(20, 0);
    expect(Math.abs(after.sigma - 1)).toBeLessThan(0.1);
    const before = fitOf(profileOf(40, 1, [15.5, 20], [6.5, next]), crossings([9]));
    expect(before.contrast).toBeCloseTo(20, 0);
    expect(Math.abs(before.sigma - 1)).toBeLessThan(0.1);
  });
});

test('beyond a neighbour five deviations and more away nothing counts', () => {
  // Past the neighbour the side is no even tone: a light a sample wide.
  const clear = profileOf(40, 1, [15.5, 20], [6.5, 15]);
  const lit = clear.map((value, k) => (k === 3 ? value + 12 : value));
  const [plain, beside] = [clear, lit].map((values) => fitOf(values, crossings([9])));
  expect(Math.abs(Number(plain?.sigma) - 1)).toBeLessThan(0.05);
  expect(beside?.sigma).toBeCloseTo(Number(plain?.sigma), 6);
});

test('seen from its other side an edge is the same, however it is grained', () => {
  const random = seeded(5);
  for (const away of [8, 9, 10]) {
    const values = profileOf(40, 1, [15.5, 20], [15.5 - away, 15]).map((value) => value + random());
    const found = fitOf(values, crossings([away]));
    const turned = fitOf(values.toReversed(), crossings(), crossings([away]));
    expect(turned.sigma).toBeCloseTo(found.sigma, 4);
    expect(turned.contrast).toBeCloseTo(found.contrast, 4);
  }
});

test('distances past the count are left over from another place and say nothing', () => {
  const values = profileOf(40, 3, [15.5, 20]);
  const plain = fitOf(values);
  // 17 and 18 lie beyond the profile: were they true, only 9 samples of a side could be trusted.
  for (const stale of [[17], [18], [5]]) {
    expect(fitOf(values, crossings([], 16, stale), crossings([], 16, stale))).toEqual(plain);
    expect(fitOf(values, crossings([16], 16, stale), crossings())).toEqual(
      fitOf(values, crossings([16])),
    );
  }
});

test('a contour beyond the profile that is true halves what can be trusted', () => {
  // Blurred and lying 17 samples off, another edge lifts the far end; trusted are 9 samples to that side.
  const values = profileOf(40, 3, [15.5, 20], [32.5, 30]);
  const found = fitOf(values, crossings(), crossings([17]));
  expect(Math.abs(found.contrast - 20)).toBeLessThan(0.7);
  expect(Math.abs(found.sigma / 3 - 1)).toBeLessThan(0.1);
  expect(Math.abs(fitOf(values).contrast - 20)).toBeGreaterThan(1); // untold, it is taken for the edge's own
});

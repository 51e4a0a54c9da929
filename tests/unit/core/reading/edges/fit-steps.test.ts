import { describe, expect, test } from 'vitest';
import { StepFit } from '../../../../../app/core/reading/edges/fit-steps.ts';
import { seeded } from '../../../../support/reading/seeded.ts';

/**
 * The normal distribution's sum up to z, by its series and beyond by its continued fraction. Abramowitz and Stegun
 * (1964), Handbook of Mathematical Functions, 26.2.10 and 26.2.14.
 */
function below(z: number): number {
  if (z < 0) return 1 - below(-z);
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  if (z > 5) return 1 - density / (z + 1 / (z + 2 / (z + 3 / z)));
  let [sum, term] = [0, z];
  for (let n = 1; n < 120; n += 2, term *= (z * z) / n) sum += term;
  return 0.5 + density * sum;
}

type Step = readonly [rise: number, place: number];

/** What is measured of steps under one blur: 24 values. */
const profileOf = (base: number, sigma: number, steps: readonly Step[]): Float64Array =>
  Float64Array.from({ length: 24 }, (_, i) =>
    steps.reduce((sum, [rise, place]) => sum + rise * below((i - place) / sigma), base),
  );

/** A fit begun at the given steps, bettered once or more often. */
function fitted(
  values: Float64Array,
  start: readonly number[],
  { times = 1, from = 0, to = 24 } = {},
): StepFit {
  const fit = new StepFit();
  fit.unknowns.set(start);
  for (let n = 0; n < times; n++) fit.improve(values, from, to, (start.length - 2) / 2);
  return fit;
}

// Limits are (own): what an edge of a photo is measured to.
describe('one step', () => {
  test.each<[string, number, number, Step]>([
    ['up', 30, 2, [20, 11.4]],
    ['down', 70, 2, [-25, 12.3]],
    ['hard', 40, 0.7, [15, 11.8]],
    ['soft', 20, 5, [40, 12]],
  ])('%s is found from near', (_, base, sigma, [rise, place]) => {
    const values = profileOf(base, sigma, [[rise, place]]);
    const start = [base + 2, 1.3 * sigma, 0.85 * rise, place + 0.5];
    const fit = fitted(values, start);
    expect(Math.abs(fit.base - base)).toBeLessThan(0.1);
    expect(Math.abs(fit.sigma / sigma - 1)).toBeLessThan(0.03);
    expect(Math.abs(fit.rise / rise - 1)).toBeLessThan(0.02);
    expect(Math.abs(fit.place - place)).toBeLessThan(0.05);
  });

  test('from far it comes nearer each time, and ends there', () => {
    const values = profileOf(30, 1.5, [[30, 12.5]]);
    const once = fitted(values, [25, 4, 15, 9]);
    const often = fitted(values, [25, 4, 15, 9], { times: 5 });
    const off = ({ place, sigma }: StepFit): number => Math.hypot(place - 12.5, sigma - 1.5);
    expect(off(once)).toBeLessThan(Math.hypot(3.5, 2.5));
    expect(off(often)).toBeLessThan(0.02);
  });

  test('only the values asked for count', () => {
    const values = profileOf(30, 1.5, [[30, 12]]);
    values.fill(500, 0, 4);
    values.fill(-500, 20);
    const fit = fitted(values, [31, 2, 28, 12.4], { from: 4, to: 20, times: 2 });
    expect(Math.abs(fit.place - 12)).toBeLessThan(0.02);
    expect(Math.abs(fit.rise - 30)).toBeLessThan(0.1);
  });

  test('noise of half an L* moves it by a tenth of a sample', () => {
    const random = seeded(5);
    const noisy = profileOf(30, 2, [[30, 12]]).map((value) => value + random() - 0.5);
    const fit = fitted(noisy, [31, 2.5, 28, 12.4], { times: 2 });
    expect(Math.abs(fit.place - 12)).toBeLessThan(0.1);
  });

  test('sigma is held between 0.2 and 24 samples', () => {
    const step = Float64Array.from({ length: 24 }, (_, i) => (i < 12 ? 30 : 60));
    expect(fitted(step, [30, 1, 30, 11.5], { times: 6 }).sigma).toBeGreaterThanOrEqual(0.2);
    const ramp = Float64Array.from({ length: 24 }, (_, i) => 40 + i);
    const wide = fitted(ramp, [35, 20, 60, 12], { times: 8 });
    expect(wide.sigma).toBeLessThanOrEqual(24);
    expect(wide.sigma).toBeGreaterThan(10);
  });

  test('a plain profile stays as it is', () => {
    const fit = fitted(new Float64Array(24).fill(50), [50, 2, 0, 12]);
    expect(fit.base).toBeCloseTo(50, 6);
    expect(fit.rise).toBeCloseTo(0, 6);
  });
});

describe('a step with neighbours under the same blur', () => {
  test.each<[string, readonly Step[]]>([
    [
      'one higher up',
      [
        [20, 12],
        [15, 18],
      ],
    ],
    [
      'a narrow line',
      [
        [25, 11],
        [-25, 15],
      ],
    ],
    [
      'one on either side',
      [
        [20, 12],
        [10, 5],
        [-15, 19],
      ],
    ],
  ])('%s: all are found', (_, steps) => {
    const values = profileOf(35, 1.4, steps);
    const start = [36, 1.8, ...steps.flatMap(([rise, place]) => [0.9 * rise, place + 0.2])];
    const fit = fitted(values, start, { times: 4 });
    expect(Math.abs(fit.sigma - 1.4)).toBeLessThan(0.05);
    for (const [n, [rise, place]] of steps.entries()) {
      expect(Math.abs(Number(fit.unknowns[2 + 2 * n]) - rise)).toBeLessThan(0.5);
      expect(Math.abs(Number(fit.unknowns[3 + 2 * n]) - place)).toBeLessThan(0.05);
    }
  });

  test('only the values asked for count', () => {
    const values = profileOf(35, 1.4, [
      [20, 12],
      [15, 17],
    ]);
    values.fill(500, 0, 5);
    values.fill(-500, 21);
    const start = [36, 1.8, 18, 12.2, 13, 17.2];
    const fit = fitted(values, start, { times: 4, from: 5, to: 21 });
    expect(Math.abs(fit.sigma - 1.4)).toBeLessThan(0.05);
    expect(Math.abs(fit.place - 12)).toBeLessThan(0.05);
    expect(Math.abs(fit.rise - 20)).toBeLessThan(0.5);
  });

  test('a neighbour that hardly shows stays where it was taken to be', () => {
    const values = profileOf(35, 1.4, [[30, 12]]);
    const fit = fitted(values, [36, 1.8, 27, 12.3, 0.05, 18], { times: 3 });
    expect(Math.abs(Number(fit.unknowns[5]) - 18)).toBeLessThan(0.5);
    expect(Math.abs(fit.place - 12)).toBeLessThan(0.05);
  });
});

import { describe, expect, test } from 'vitest';
import type { ToneRange } from '../../../../../app/core/reading/reading.ts';
import {
  chooseLimits,
  proposeBands,
} from '../../../../../app/core/reading/values/choose-limits.ts';

/** The sheet is the picture's own scale: what lies a few L* from 100 stays paper. */
const range: ToneRange = { mode: 'photographed', lo: 0, hi: 100, dark: 0, paper: 100 };

/** Counts by bin (L* x 2.55). */
function histogramOf(counts: Readonly<Record<number, number>>): Uint32Array {
  const histogram = new Uint32Array(256);
  for (const [bin, count] of Object.entries(counts)) histogram[Number(bin)] = count;
  return histogram;
}

describe('limits', () => {
  // Four tones, 40 bins apart: the limits lie midway, at bins 60, 100 and 140.
  const four = histogramOf({ 40: 10, 80: 10, 120: 10, 160: 10 });
  const inBins = (limits: readonly number[]): number[] =>
    limits.map((limit) => Math.round(limit * 2.55));

  test('are the best for the number she wished', () => {
    const chosen = (bands: number) => inBins(chooseLimits(four, 7, range, { bands }).limits);
    expect(chosen(1)).toEqual([]);
    expect(chosen(2)).toEqual([100]);
    expect(chosen(4)).toEqual([60, 100, 140]);
  });

  test('never make more bands than the picture has tones, nor than the picture itself shows', () => {
    const most = chooseLimits(four, 7, range, { bands: 7 });
    expect([most.tones, inBins(most.limits)]).toEqual([4, [60, 100, 140]]);
    const two = chooseLimits(four, 2, range, { bands: 7 });
    expect([two.tones, inBins(two.limits)]).toEqual([2, [100]]);
    const many = histogramOf(Object.fromEntries(Array.from({ length: 20 }, (_, i) => [10 * i, 5])));
    expect(chooseLimits(many, 20, range, { bands: 9 }).limits).toHaveLength(6); // seven bands
  });

  test('hers are taken as they are, each once, from dark to light', () => {
    const { limits } = chooseLimits(four, 7, range, { bands: 2, limits: [70, 20, 45, 20] });
    expect(limits).toEqual([20, 45, 70]);
  });

  test('where she wished nothing are those of the number proposed', () => {
    const { limits, proposedBands } = chooseLimits(four, 7, range, {});
    expect(limits).toHaveLength(proposedBands - 1);
  });

  test('of an empty picture are none', () => {
    const empty = chooseLimits(new Uint32Array(256), 7, range, {});
    expect([empty.limits, empty.tones, empty.proposedBands]).toEqual([[], 0, 1]);
  });
});

describe('how many bands', () => {
  /** Best partitions of a hundred pixels, told by how far tones stray in each, L*, and where the lightest begins. */
  const bestOf = (strays: readonly number[], lightest: readonly number[] = []) =>
    strays.map((stray, i) => ({
      limits: i === 0 ? [] : [lightest[i] ?? 50],
      cost: 100 * (stray * 2.55) ** 2,
    }));
  const grey = histogramOf({ 100: 100 });
  const bands = (strays: readonly number[]) => proposeBands(bestOf(strays), grey, range).bands;

  test('as many as there are tones below four', () => {
    expect(proposeBands(bestOf([9, 4, 0]), grey, range)).toEqual({
      bands: 3,
      why: { why: 'few-tones', tones: 3 },
    });
    expect(proposeBands(bestOf([0]), grey, range)).toEqual({
      bands: 1,
      why: { why: 'few-tones', tones: 1 },
    });
    expect(proposeBands([], grey, range).bands).toBe(1);
  });

  test('three where tones stray 5 L* and less in three', () => {
    expect(bands([20, 9, 4.99, 3, 2])).toBe(3);
    expect(bands([20, 9, 5.01, 3, 2])).toBe(4);
  });

  test('five where they stray over 7.5 in four, else four', () => {
    expect(bands([20, 15, 10, 7.49, 5])).toBe(4);
    expect(bands([20, 15, 10, 7.51, 5])).toBe(5);
    expect(bands([20, 15, 10, 7.51])).toBe(4); // there is no fifth tone
  });

  test('five where all is of one colour, but where three or no more than four do', () => {
    const inOneColour = (strays: readonly number[]) =>
      proposeBands(bestOf(strays), grey, range, true).bands;
    expect(inOneColour([20, 15, 10, 7.49, 5])).toBe(5);
    expect(inOneColour([20, 15, 10, 7.49])).toBe(4);
    expect(inOneColour([20, 9, 4.99, 3, 2])).toBe(3);
  });

  describe('five for the sake of the whites', () => {
    /** Whites of bin 250 (98 L*), lights of bin 220 (86.3 L*), darks. */
    const proposed = (whites: number, lights: number, four: number, five: number) =>
      proposeBands(
        bestOf([20, 9, 4, 3, 2], [0, 0, 0, four, five]),
        histogramOf({ 250: whites, 220: lights, 50: 1000 - whites - lights }),
        range,
      ).bands;

    test('where with four they run into the lights', () => {
      // From 80 on: 98 and 86.3 half and half are 92.2, well off the paper; from 90 on the whites alone.
      expect(proposed(100, 100, 80, 90)).toBe(5);
      // With nine whites to a light the mean is 96.9, near enough to the paper: four do.
      expect(proposed(180, 20, 80, 90)).toBe(3);
      // With five the whites are no more apart.
      expect(proposed(100, 100, 80, 80)).toBe(3);
      // With four they were apart already.
      expect(proposed(100, 100, 90, 90)).toBe(3);
    });

    test('from a hundredth of the picture on', () => {
      expect(proposed(10, 100, 80, 90)).toBe(5);
      expect(proposed(9, 100, 80, 90)).toBe(3);
    });

    test('as they lie on the sheet, whose paper may be darker', () => {
      const within = (paper: number) =>
        proposeBands(
          bestOf([20, 9, 4, 3, 2], [0, 0, 0, 80, 90]),
          histogramOf({ 250: 100, 220: 100, 50: 800 }),
          { ...range, paper },
        ).bands;
      // 98 of 100 on a paper of 90 is 88.2, 1.8 from it; with lights 82.9, 7.1 from it.
      expect(within(90)).toBe(5);
      // On a paper of 60 all distances shrink to six tenths: 4.7 stays paper with four.
      expect(within(60)).toBe(3);
    });
  });
});

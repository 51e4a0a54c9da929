import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { PairOption, PairPoint } from '../../../../../app/core/plan/runs/pair-judge.ts';
import { pairOptions, sharePairs } from '../../../../../app/core/plan/runs/share-pairs.ts';

// Paints of the tests' own, each of which moves one figure of the colour by 1 for 1 ml/m2 unless said. What a choice
// gains is reckoned by hand; the least gains it is held to are those the file tells beside its figures (own).
const paints = 3;
const options = pairOptions(paints);
const slopesOf = (...rows: readonly (readonly number[])[]) =>
  Float64Array.from(
    Array.from({ length: 4 * paints }, (_, i) => rows[Math.floor(i / 4)]?.[i % 4] ?? 0),
  );
const plain = slopesOf([1], [0, 1], [0, 0, 1]);

const point = (family: number, wanted: readonly number[], more: Partial<PairPoint> = {}) => ({
  ...{ family, slopes: plain, most: 100, weight: 1 },
  wanted: Float64Array.from({ length: 4 }, (_, r) => wanted[r] ?? 0),
  ...more,
});
/** Number of the option that is so many parts of each paint. */
const mixOf = (...parts: readonly number[]): number =>
  options.findIndex(({ members, parts: own }) =>
    parts.every((part, paint) => part === (own[members.indexOf(paint)] ?? 0)),
  );
const [first, second, third] = [mixOf(1, 0, 0), mixOf(0, 1, 0), mixOf(0, 0, 1)];
const shared = (
  points: readonly PairPoint[],
  families: number,
  most: number,
  before: readonly number[] = [],
) => sharePairs(points, options, families, most, new Set(before));

test('options are all mixes of up to three paints, their parts a whole of 1', () => {
  expect(options.slice(0, 3).map(({ members }) => members)).toEqual([[0], [1], [2]]);
  expect([...(options[mixOf(3, 1, 0)] as PairOption).unit]).toEqual([0.75, 0.25, 0]);
  expect(mixOf(1, 1, 1)).toBeGreaterThan(0);
  for (const { unit } of options) expect(unit.reduce((sum, each) => sum + each)).toBeCloseTo(1, 12);
});

describe('puddles of a wash', () => {
  const apart = [point(0, [3]), point(1, [0, 0, 3])];

  test('two families of two paints take one each, where two are allowed', () => {
    expect(shared(apart, 2, 2)).toEqual({
      puddles: expect.arrayContaining([first, third]),
      own: [first, third],
      meets: [null, null],
    });
    const { puddles, own } = shared(apart, 2, 1);
    expect(puddles).toHaveLength(1);
    expect(own[0]).toBe(own[1]);
  });

  test('the one that is most of it is a family’s own, the other meets it', () => {
    // 8 to 1 is no mix that can be made: one is at most four times another.
    const both = [point(0, [8, 1]), point(1, [1, 8])];
    expect(shared(both, 2, 2)).toMatchObject({ own: [first, second], meets: [second, first] });
  });

  test('one mix that is right everywhere is one puddle', () => {
    const mix = mixOf(3, 1, 0);
    expect(shared([point(0, [3, 1]), point(1, [6, 2])], 2, 3)).toEqual({
      puddles: [mix],
      own: [mix, mix],
      meets: [null, null],
    });
  });

  test('a larger family counts for more', () => {
    const one = (weights: readonly [number, number]) =>
      shared(
        [point(0, [3], { weight: weights[0] }), point(1, [0, 3], { weight: weights[1] })],
        2,
        1,
      );
    expect(one([5, 1]).puddles).toEqual([first]);
    expect(one([1, 5]).puddles).toEqual([second]);
  });

  test('no more is laid than may lie there: what is strong is chosen where little may', () => {
    const slopes = slopesOf([1], [1.5, 0.2]);
    expect(shared([point(0, [3], { slopes })], 1, 1).own).toEqual([first]);
    expect(shared([point(0, [3], { slopes, most: 2 })], 1, 1).own).toEqual([second]);
  });
});

test('a mix that only meets a paint is taken for what the family is painted with', () => {
  // 20 to 1 to 1 is 14 of the first and 8 of a mix of 6 to 1 to 1, which is no paint by itself: she is asked to mix it.
  const mix = mixOf(6, 1, 1);
  expect(shared([point(0, [20, 1, 1])], 1, 2)).toEqual({
    puddles: expect.arrayContaining([first, mix]),
    own: [mix],
    meets: [first],
  });
});

describe('what a choice has to gain', () => {
  // A miss by nothing costs 0.5, one by 1 costs sqrt(1.25).
  const miss = Math.sqrt(1.25) - 0.5;

  test('a puddle more: 0.05 on the whole, and 0.1 where it only meets another', () => {
    const weighing = (weight: number) =>
      shared([point(0, [3]), point(1, [3, 1], { weight })], 2, 2);
    // It gains so much of its own weight, and the whole is 1 more than that.
    const enough = 0.05 / (miss - 0.1 - 0.05);
    expect(weighing(0.97 * enough)).toEqual({
      puddles: [first],
      own: [first, first],
      meets: [null, null],
    });
    expect(weighing(1.03 * enough)).toMatchObject({ own: [first, first], meets: [null, second] });
  });

  test('a paint more in a puddle: 0.02', () => {
    // Half of each is exact; either alone misses by so much.
    const gaining = (gain: number) => {
      const missed = Math.sqrt((0.5 + gain) ** 2 - 0.25);
      const slopes = slopesOf([1, 0], [1, missed / 1.5], []);
      return shared([point(0, [3, missed], { slopes })], 1, 1).puddles;
    };
    expect(gaining(0.015).map((n) => options[n]?.members.length)).toEqual([1]);
    expect(gaining(0.025)).toEqual([mixOf(1, 1, 0)]);
  });

  test('a puddle that an earlier wash has already: 0.07 less', () => {
    const missing = (cost: number) => {
      // The second paint goes askew by so much that it costs that much more.
      const missed = Math.sqrt((0.5 + cost) ** 2 - 0.25);
      const slope = missed / Math.sqrt(9 - missed ** 2);
      return [point(0, [3], { slopes: slopesOf([1], [1, slope], []) })];
    };
    expect(shared(missing(0.065), 1, 1, [second]).own).toEqual([second]);
    expect(shared(missing(0.065), 1, 1).own).toEqual([first]);
    expect(shared(missing(0.075), 1, 1, [second]).own).toEqual([first]);
  });
});

/** Any few places of up to three families that want any paint. */
const anyWash = fc.record({
  wants: fc.array(
    fc.tuple(
      fc.nat({ max: 2 }),
      fc.array(fc.integer({ min: 0, max: 8 }), { minLength: 3, maxLength: 3 }),
      fc.integer({ min: 1, max: 5 }),
    ),
    { minLength: 3, maxLength: 6 },
  ),
  most: fc.integer({ min: 1, max: 3 }),
});

test('whatever is wanted: puddles are few, each asked for, and a mix is somebody’s own', () => {
  fc.assert(
    fc.property(anyWash, ({ wants, most }) => {
      // Every family has a place.
      const points = wants.map(([family, wanted, weight], n) =>
        point(n < 3 ? n : family, wanted, { weight, most: 12 }),
      );
      const { puddles, own, meets } = shared(points, 3, most);
      expect(puddles.length).toBeLessThanOrEqual(most);
      expect(new Set(puddles).size).toBe(puddles.length);
      for (const n of [...own, ...meets.filter((other) => other !== null)])
        expect(puddles).toContain(n);
      for (const [f, other] of meets.entries()) {
        expect(other).not.toBe(own[f]);
        if (other !== null && (options[other]?.members.length ?? 0) > 1)
          expect(own).toContain(other);
      }
    }),
    {
      numRuns: 60,
      // Two mixes that would both only meet a third.
      examples: [
        [
          {
            wants: [
              [0, [2, 2, 3], 1],
              [0, [6, 3, 4], 1],
              [0, [7, 6, 4], 2],
              [1, [3, 0, 1], 1],
            ],
            most: 3,
          },
        ],
      ],
    },
  );
});

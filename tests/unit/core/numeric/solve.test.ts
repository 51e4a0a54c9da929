import { describe, expect, test } from 'vitest';
import { solveLinear, solveSquare } from '../../../../app/core/numeric/solve.ts';
import { seeded } from '../../../support/reading/seeded.ts';

/** The unknowns of a system given row by row; null where it says there is no inverse. */
function solved(rows: readonly (readonly number[])[], right: readonly number[]): number[] | null {
  const answer = Float64Array.from(right);
  return solveSquare(Float64Array.from(rows.flat()), answer, rows.length) ? [...answer] : null;
}

/** Left sides of the equations with these unknowns put in. */
const putIn = (rows: readonly (readonly number[])[], unknowns: readonly number[]): number[] =>
  rows.map((row) => row.reduce((sum, factor, k) => sum + factor * (unknowns[k] as number), 0));

describe('a square system', () => {
  test.each([1, 2, 3, 5, 8, 20])('of %i equations: the unknowns put in fulfil them', (size) => {
    const random = seeded(40 + size);
    const number = (): number => 2 * random() - 1;
    for (let turn = 0; turn < 25; turn++) {
      const rows = Array.from({ length: size }, () => Array.from({ length: size }, number));
      const right = Array.from({ length: size }, number);
      const unknowns = solved(rows, right);
      const left = putIn(rows, unknowns ?? []);
      for (const [i, side] of right.entries()) expect(left[i]).toBeCloseTo(side, 8);
    }
  });

  test('nothing at the head of the first equation: rows are swapped as a whole', () => {
    const rows = [
      [0, 2, 1],
      [4, -1, 3],
      [1, 1, 1],
    ];
    const unknowns = [2, -3, 5];
    const found = solved(rows, putIn(rows, unknowns));
    for (const [i, unknown] of unknowns.entries()) expect(found?.[i]).toBeCloseTo(unknown, 12);
    expect(
      solved(
        [
          [0, 1],
          [1, 0],
        ],
        [7, 9],
      ),
    ).toEqual([9, 7]);
  });

  test.each([
    [
      'two equations alike',
      [
        [1, 2, 3],
        [2, 4, 6],
        [1, 0, 1],
      ],
    ],
    [
      'an unknown that stands nowhere',
      [
        [0, 1],
        [0, 2],
      ],
    ],
    ['nothing at all', [[0]]],
    [
      'not a number',
      [
        [Number.NaN, 1],
        [1, Number.NaN],
      ],
    ],
  ])('%s: there is no inverse, and it says so', (_name, rows) => {
    expect(solved(rows, Array(rows.length).fill(1))).toBeNull();
  });
});

describe('a symmetric positive system', () => {
  /** Rows times their own transpose, and a little on the diagonal: positive whatever the rows. */
  const madeSystem = (size: number): number[][] => {
    const random = seeded(70 + size);
    const rows = Array.from({ length: size }, () => Array.from({ length: size }, random));
    return rows.map((one, i) =>
      rows.map((other, j) =>
        one.reduce((sum, value, k) => sum + value * (other[k] as number), i === j ? 0.1 : 0),
      ),
    );
  };

  test.each([1, 2, 3, 7, 20])('of %i equations: the unknowns put in fulfil them', (size) => {
    const rows = madeSystem(size);
    const unknowns = rows.map((_, i) => i - 2.5);
    const answer = Float64Array.from(putIn(rows, unknowns));
    expect(solveLinear(Float64Array.from(rows.flat()), answer, size)).toBe(true);
    for (const [i, unknown] of unknowns.entries()) expect(answer[i]).toBeCloseTo(unknown, 7);
  });

  test('reads its lower half only, and leaves alone what lies beyond its unknowns', () => {
    const matrix = Float64Array.of(4, 99, 2, 5, 7, 8);
    const right = Float64Array.of(10, 13, 21, 34);
    expect(solveLinear(matrix, right, 2)).toBe(true);
    // 4 x + 2 y = 10, 2 x + 5 y = 13.
    expect([...right].map((value) => value.toFixed(9))).toEqual(
      [1.5, 2, 21, 34].map((value) => value.toFixed(9)),
    );
    expect([matrix[1], matrix[4], matrix[5]]).toEqual([99, 7, 8]);
  });

  test.each([
    ['flat along a line', [1, 1, 1, 1]],
    ['a saddle', [1, 2, 2, 1]],
    ['not a number', [Number.NaN, 0, 0, 1]],
  ])('%s: it says that there is no one answer', (_name, matrix) => {
    expect(solveLinear(Float64Array.from(matrix), Float64Array.of(1, 1), 2)).toBe(false);
  });
});

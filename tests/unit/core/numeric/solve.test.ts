import { describe, expect, test } from 'vitest';
import { solveSquare } from '../../../../app/core/numeric/solve.ts';
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

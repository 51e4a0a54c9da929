import { describe, expect, test } from 'vitest';
import {
  chamferDistances,
  distanceToOutline,
  smoothStep,
} from '../../../../app/core/raster/distance-map.ts';

/** Rows of signs as a map: '#' is 1, all else 0. */
const drawn = (...rows: string[]) => ({
  size: { width: rows[0]?.length ?? 0, height: rows.length },
  map: Uint8Array.from(rows.join(''), (sign) => (sign === '#' ? 1 : 0)),
});
const rowsOf = (values: Float32Array, width: number): number[][] =>
  Array.from({ length: values.length / width }, (_, y) =>
    [...values.subarray(y * width, (y + 1) * width)].map((value) => Math.round(100 * value) / 100),
  );

describe('steps to the nearest marked cell', () => {
  // Straight on 1, over a corner 1.41.
  test.each([
    [
      ['#...', '....', '....'],
      [
        [0, 1, 2, 3],
        [1, 1.41, 2.41, 3.41],
        [2, 2.41, 2.83, 3.83],
      ],
    ],
    [
      ['....', '....', '...#'],
      [
        [3.83, 2.83, 2.41, 2],
        [3.41, 2.41, 1.41, 1],
        [3, 2, 1, 0],
      ],
    ],
    [
      ['...#', '....', '....'],
      [
        [3, 2, 1, 0],
        [3.41, 2.41, 1.41, 1],
        [3.83, 2.83, 2.41, 2],
      ],
    ],
    [
      ['....', '....', '#...'],
      [
        [2, 2.41, 2.83, 3.83],
        [1, 1.41, 2.41, 3.41],
        [0, 1, 2, 3],
      ],
    ],
    [
      ['#..#', '....'],
      [
        [0, 1, 1, 0],
        [1, 1.41, 1.41, 1],
      ],
    ],
    [['####'], [[0, 0, 0, 0]]],
  ])('%j', (rows, wanted) => {
    const { map, size } = drawn(...rows);
    expect(rowsOf(chamferDistances(map, 1, size), size.width)).toEqual(wanted);
  });

  test('to another value; to none it is infinite', () => {
    const { map, size } = drawn('##.');
    expect([...chamferDistances(map, 0, size)]).toEqual([2, 1, 0]);
    expect([...chamferDistances(map, 7, size)]).toEqual([Infinity, Infinity, Infinity]);
  });

  test('rows do not run on into each other', () => {
    const { map, size } = drawn('..#', '...', '...');
    expect(rowsOf(chamferDistances(map, 1, size), 3)[1]?.[0]).toBe(2.41);
  });
});

describe('px to the outline of an area', () => {
  test('half a px on either side of it, whole ones from there', () => {
    const { map, size } = drawn('...##');
    expect([...distanceToOutline(map, size, 3)]).toEqual([2.5, 1.5, 0.5, 0.5, 1.5]);
    const upright = distanceToOutline(map, { width: 1, height: 5 }, 3);
    expect([...upright]).toEqual([2.5, 1.5, 0.5, 0.5, 1.5]);
  });

  test('no farther than it reaches', () => {
    const { map, size } = drawn('......#');
    expect([...distanceToOutline(map, size, 2)]).toEqual([2, 2, 2, 2, 1.5, 0.5, 0.5]);
  });

  test('aslant: the nearest side’s middle', () => {
    const { map, size } = drawn('#..', '...', '...');
    // From the middle of px (2, 2) to the sides right of and below (0, 0): sqrt(1.5^2 + 2^2).
    expect(rowsOf(distanceToOutline(map, size, 9), 3)).toEqual([
      [0.5, 0.5, 1.5],
      [0.5, 1.12, 1.8],
      [1.5, 1.8, 2.5],
    ]);
  });

  test('the picture’s border is no outline', () => {
    const { map, size } = drawn('##', '##');
    expect([...distanceToOutline(map, size, 4)]).toEqual([4, 4, 4, 4]);
  });
});

test('a smooth step: nothing below 0, all above 1, 0.15625 at a quarter', () => {
  expect([-1, 0, 0.25, 0.5, 0.75, 1, 2].map(smoothStep)).toEqual([
    0, 0, 0.15625, 0.5, 0.84375, 1, 1,
  ]);
});

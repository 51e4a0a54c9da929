import { expect, test } from 'vitest';
import {
  type Corners,
  composed,
  cornersOf,
  homographyOf,
  placesOnSheet,
  project,
  scaledCorners,
} from '../../../../app/core/compare/homography.ts';

// Reckoned by hand (own).
const close = (
  found: readonly (readonly [number, number])[],
  wanted: readonly (readonly [number, number])[],
) => {
  expect(found).toHaveLength(wanted.length);
  for (const [n, [x, y]] of wanted.entries()) {
    expect(found[n]?.[0]).toBeCloseTo(x, 9);
    expect(found[n]?.[1]).toBeCloseTo(y, 9);
  }
};

test('a place goes by its row of the matrix over that of w', () => {
  const [x, y] = project(Float64Array.of(2, 3, 5, 7, 11, 13, 0.5, 0.25, 1), 4, 8);
  // w = 2 + 2 + 1.
  expect(x).toBeCloseTo((8 + 24 + 5) / 5, 12);
  expect(y).toBeCloseTo((28 + 88 + 13) / 5, 12);
});

test('one after the other is the first, then the second, its last number 1', () => {
  const first = Float64Array.of(1, 0, 3, 0, 1, -2, 0, 0, 1);
  const second = Float64Array.of(2, 0, 0, 0, 4, 0, 0.1, 0, 1);
  const both = composed(second, first);
  close([project(both, 2, 7)], [[10 / 1.5, 20 / 1.5]]);
  expect(both[8]).toBe(1);
});

test('corners go from px to shares and back', () => {
  const corners = cornersOf(400, 300);
  close(scaledCorners(corners, 1 / 400, 1 / 300), cornersOf(1, 1));
  const aslant: Corners = [
    [0.1, 0.2],
    [0.9, 0.1],
    [0.8, 0.7],
    [0.2, 0.9],
  ];
  close(scaledCorners(aslant, 10, 100), [
    [1, 20],
    [9, 10],
    [8, 70],
    [2, 90],
  ]);
});

test('places of a picture are shares of the sheet seen there; of what is no sheet there are none', () => {
  const turned: Corners = [
    [300, 100],
    [300, 300],
    [100, 300],
    [100, 100],
  ];
  close(
    placesOnSheet(
      [
        [300, 100],
        [250, 200],
      ],
      turned,
    ),
    [
      [0, 0],
      [0.5, 0.25],
    ],
  );
  const crossed: Corners = [turned[0], turned[2], turned[1], turned[3]];
  expect(placesOnSheet([[200, 200]], crossed)).toEqual([]);
  expect(homographyOf(crossed, turned)).toBeNull();
  expect(homographyOf(turned, crossed)).toBeNull();
});

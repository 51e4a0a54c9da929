import { describe, expect, test } from 'vitest';
import { runToEnd } from '../../../../../app/core/numeric/run-to-end.ts';
import { wholeThing } from '../../../../../app/core/reading/subject/whole-thing.ts';

// Things of the tests' own on a dark ground, on a grid of 60 by 45 cells; limits of size are the file's own (own).
const grid = { width: 60, height: 45 };
const cells = grid.width * grid.height;
type Place = readonly [x: number, y: number];
type At = (x: number, y: number) => number;

const planeOf = (at: At): Float32Array =>
  Float32Array.from({ length: cells }, (_, i) => at(i % grid.width, Math.floor(i / grid.width)));
const within = (x: number, y: number, [u, v]: Place, far: number): boolean =>
  Math.hypot(x - u, y - v) < far;

/** What is found of a picture by its lightness where the eye is drawn so much to every place. */
const found = (lightness: At, drawn: At, a: At = () => 0): Uint8Array | null =>
  runToEnd(
    wholeThing({
      grid,
      drawn: planeOf(drawn),
      colours: [planeOf(lightness), planeOf(a), new Float32Array(cells)],
    }),
  );
const holds = (mask: Uint8Array | null, [x, y]: Place): boolean => mask?.[y * grid.width + x] === 1;

const middle: Place = [30, 22];
const [left, right] = [
  [16, 22],
  [44, 22],
] as const;

describe('the size of a thing', () => {
  const disc = (far: number) =>
    found(
      (x, y) => (within(x, y, middle, far) ? 75 : 30),
      (x, y) => (within(x, y, middle, far) ? 1 : 0.1),
    );

  test('is between 1.5 and 40 % of the sheet', () => {
    // Radii of 3 and 4 cells are 1.0 and 1.9 %, of 17.5 and 19 cells 36 and 42 %.
    expect([3, 4, 10, 17.5, 19].map((far) => disc(far) !== null)).toEqual([
      false,
      true,
      true,
      true,
      false,
    ]);
  });

  test('is all of it and nothing else', () => {
    const mask = disc(10);
    for (let i = 0; i < cells; i++) {
      const [x, y] = [i % grid.width, Math.floor(i / grid.width)];
      if (within(x, y, middle, 9)) expect(holds(mask, [x, y])).toBe(true);
      if (!within(x, y, middle, 11)) expect(holds(mask, [x, y])).toBe(false);
    }
  });
});

describe('of two things', () => {
  const [one, other] = [left, right];
  const far = 8;
  const isIn = (x: number, y: number): boolean =>
    within(x, y, one, far) || within(x, y, other, far);
  const chosen = (lightness: At, drawn: At, a?: At) => {
    const mask = found(lightness, drawn, a);
    return [holds(mask, one), holds(mask, other)];
  };

  test('the one that draws the eye more', () => {
    const lightness: At = (x, y) => (isIn(x, y) ? 75 : 30);
    for (const to of [one, other]) {
      const drawn: At = (x, y) => (isIn(x, y) ? (within(x, y, to, far) ? 1 : 0.4) : 0.05);
      expect(chosen(lightness, drawn)).toEqual([to === one, to === other]);
    }
  });

  test('the one whose outline stands out more, by lightness or by colour', () => {
    const drawn: At = (x, y) => (isIn(x, y) ? 1 : 0.05);
    for (const plain of [one, other]) {
      const stronger: At = (x, y) => (within(x, y, plain, far) ? 60 : isIn(x, y) ? 38 : 30);
      expect(chosen(stronger, drawn)).toEqual([plain === one, plain === other]);
      const redder: At = (x, y) => (within(x, y, plain, far) ? 30 : isIn(x, y) ? 8 : 0);
      expect(chosen(() => 50, drawn, redder)).toEqual([plain === one, plain === other]);
    }
  });

  test('the one that is round, not the one of the same size that is long and thin', () => {
    for (const round of [one, other]) {
      const long = round === one ? other : one;
      const isLong = (x: number, y: number): boolean =>
        Math.abs(x - long[0]) < 3 && Math.abs(y - long[1]) < 17;
      const lightness: At = (x, y) => (within(x, y, round, far) || isLong(x, y) ? 75 : 30);
      const drawn: At = (x, y) => (within(x, y, round, far) || isLong(x, y) ? 1 : 0.05);
      expect(chosen(lightness, drawn)).toEqual([round === one, round === other]);
    }
  });
});

test.each<[string, Place, Place]>([
  ['left', [0, 22], [40, 22]],
  ['right', [59, 22], [19, 22]],
  ['upper', [30, 0], [30, 32]],
  ['lower', [30, 44], [30, 12]],
])('not the one that the %s edge of the sheet cuts in half', (_, cut, whole) => {
  // As large within the sheet: half of a disc that is twice as large.
  const isIn = (x: number, y: number): boolean =>
    within(x, y, cut, 8 * Math.SQRT2) || within(x, y, whole, 8);
  const mask = found(
    (x, y) => (isIn(x, y) ? 75 : 30),
    (x, y) => (isIn(x, y) ? 1 : 0.05),
  );
  const beside = (at: Place): Place => [(at[0] * 14 + 30) / 15, (at[1] * 14 + 22) / 15];
  expect([holds(mask, whole), holds(mask, beside(cut))]).toEqual([true, false]);
});

test('a hole in it is part of it, a bay open to the sheet’s edge is not', () => {
  const isHole = (x: number, y: number): boolean => within(x, y, [30, 20], 3);
  const isBay = (x: number, y: number): boolean => Math.abs(x - 30) < 4 && y > 26;
  const isIn = (x: number, y: number): boolean =>
    within(x, y, middle, 13) && !isHole(x, y) && !isBay(x, y);
  const mask = found(
    (x, y) => (isIn(x, y) ? 75 : 30),
    (x, y) => (isIn(x, y) ? 1 : 0.05),
  );
  expect([holds(mask, [30, 20]), holds(mask, [30, 32])]).toEqual([true, false]);
});

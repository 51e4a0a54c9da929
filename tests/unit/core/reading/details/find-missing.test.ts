import { describe, expect, test } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import type { LabPlanes } from '../../../../../app/core/raster/linear-raster.ts';
import { findMissing, light } from '../../../../../app/core/reading/details/find-missing.ts';
import { toneRange } from '../../../../../app/core/reading/tone-range.ts';

// One cell that differs from an even sheet, on a grid of 2 cells on a mm; what it must differ by is as the file says
// it, tried on either side (own).
const size = { width: 24, height: 16 };
const middle = [12, 8] as const;
const dark = 1;
type At = (x: number, y: number) => Lab;

const planesOf = (at: At): LabPlanes => {
  const plane = (c: 0 | 1 | 2): Float32Array =>
    Float32Array.from(
      { length: size.width * size.height },
      (_, i) => at(i % size.width, Math.floor(i / size.width))[c],
    );
  return { lightness: plane(0), a: plane(1), b: plane(2) };
};
const even: Lab = [60, 0, 0];

interface Told {
  readonly smooth?: At;
  readonly near?: number;
  readonly canBeLight?: boolean;
  readonly at?: readonly [number, number];
}

/** What is missing where one cell of the photo has that colour. */
function missing(
  own: Lab,
  { smooth = () => even, near = 1, canBeLight = true, at = middle }: Told = {},
) {
  const photo = planesOf((x, y) => (x === at[0] && y === at[1] ? own : smooth(x, y)));
  const asked: (readonly [number, number])[] = [];
  const { kinds, times } = findMissing(photo, planesOf(smooth), size, {
    cellsPerMm: 2,
    nearness: (x, y) => {
      asked.push([x, y]);
      return near;
    },
    range: toneRange('photographed', 0, 100, 0, 100),
    canBeLight: () => canBeLight,
  });
  const place = at[1] * size.width + at[0];
  // Nothing else is ever missing.
  expect(kinds.every((kind, i) => kind === 0 || i === place)).toBe(true);
  return { kind: kinds[place], times: Number(times[place]), asked };
}

describe('a dark', () => {
  test('is missing from 4 L* on where attention gathers, from 7.5 far from it, between them between', () => {
    for (const [near, from] of [
      [1, 4],
      [0, 7.5],
      [0.5, 5.75],
    ] as const) {
      expect(missing([60 - from + 0.1, 0, 0], { near }).kind).toBe(0);
      const found = missing([60 - from - 0.1, 0, 0], { near });
      expect(found.kind).toBe(dark);
      expect(found.times).toBeCloseTo((from + 0.1) / from, 4);
    }
  });

  test('nearness is asked at the middle of its place', () => {
    expect(missing([50, 0, 0]).asked).toEqual([[12.5 / 24, 8.5 / 16]]);
  });

  test('a stronger colour counts beside it, half and the less the stronger it is; a duller one does not', () => {
    // 12 of C*: 0.5 x 12 / (1 + 0.02 x 12).
    expect(missing([60, 12, 0]).times).toBeCloseTo(6 / 1.24 / 4, 4);
    expect(missing([60, 0, -12]).times).toBeCloseTo(6 / 1.24 / 4, 4);
    expect(missing([58, 0, 12]).times).toBeCloseTo((2 + 6 / 1.24) / 4, 4);
    const green = () => [60, -20, 20] as const;
    expect(missing([60, 0, 0], { smooth: green }).kind).toBe(0);
    expect(missing([55, 0, 0], { smooth: green }).times).toBeCloseTo(5 / 4, 4);
  });

  test('a colour may be lighter by 2 L*, no more', () => {
    expect(missing([61.9, 40, 0]).kind).toBe(dark);
    expect(missing([62.1, 40, 0]).kind).toBe(0);
  });
});

describe('a light', () => {
  test('is one from 14 L* on, where a light may be set back', () => {
    expect(missing([73.9, 0, 0]).kind).toBe(0);
    const found = missing([74.1, 0, 0]);
    expect(found.kind).toBe(light);
    expect(found.times).toBeCloseTo(14.1 / 14, 4);
    expect(missing([90, 0, 0], { canBeLight: false }).kind).toBe(0);
  });
});

describe('a rim between two slots is no detail', () => {
  // On one side of the middle all is light, on the other all is dark; borders in all four directions.
  const sides: readonly (readonly [string, (x: number, y: number, by: number) => boolean])[] = [
    ['left', (x, _, by) => x <= middle[0] - by],
    ['right', (x, _, by) => x >= middle[0] + by],
    ['above', (_, y, by) => y <= middle[1] - by],
    ['below', (_, y, by) => y >= middle[1] + by],
  ];
  test.each(sides)('of what lies %s, a mm or 2 cells away', (_, isBeyond) => {
    // As dark as a slot 2 cells away: its own blend. Three cells away it is a dark of its own.
    const darkFrom = (by: number) => (x: number, y: number) =>
      (isBeyond(x, y, by) ? [40, 0, 0] : even) as Lab;
    expect(missing([45, 0, 0], { smooth: darkFrom(2) }).kind).toBe(0);
    expect(missing([45, 0, 0], { smooth: darkFrom(3) }).kind).toBe(dark);
    // As light as it: no sparkle.
    const lightFrom = (by: number) => (x: number, y: number) =>
      (isBeyond(x, y, by) ? [85, 0, 0] : even) as Lab;
    expect(missing([80, 0, 0], { smooth: lightFrom(2) }).kind).toBe(0);
    expect(missing([80, 0, 0], { smooth: lightFrom(3) }).kind).toBe(light);
  });

  test('but what is darker than both of them is', () => {
    const smooth: At = (x) => (x < 12 ? [40, 0, 0] : even);
    expect(missing([30, 0, 0], { smooth }).times).toBeCloseTo(10 / 4, 4);
  });
});

test('up to the edges of the sheet, where there is nothing beyond', () => {
  for (const at of [
    [0, 0],
    [23, 0],
    [0, 15],
    [23, 15],
  ] as const) {
    expect(missing([50, 0, 0], { at }).times).toBeCloseTo(10 / 4, 4);
    expect(missing([80, 0, 0], { at }).kind).toBe(light);
  }
});

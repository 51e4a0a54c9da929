import { describe, expect, test } from 'vitest';
import { closeUp, fromCloseUp } from '../../../../../app/core/reading/subject/refine-line.ts';
import type { SubjectStroke } from '../../../../../app/core/reading/subject/subject.ts';
import type { ColourBytes } from '../../../../../app/core/reading/subject/subject-colours.ts';

/** 39 x 28 px in cells of 4 px: ten columns, the last of them 3 px wide, seven rows. */
const size = { width: 39, height: 28 };
const grid = { width: 10, height: 7 };
const cellPx = 4;

/** Every pixel tells its place: column in lightness, row in a, both in b. */
const colours: ColourBytes = {
  size,
  lightness: Uint8ClampedArray.from({ length: 39 * 28 }, (_, i) => i % 39),
  a: Int8Array.from({ length: 39 * 28 }, (_, i) => Math.floor(i / 39)),
  b: Int8Array.from({ length: 39 * 28 }, (_, i) => (i % 39) - Math.floor(i / 39)),
};

type Cell = readonly [column: number, row: number];

function near(subject: readonly Cell[], strokes: readonly SubjectStroke[] = []) {
  const sides = new Uint8Array(grid.width * grid.height);
  for (const [column, row] of subject) sides[row * grid.width + column] = 1;
  const empty = {
    lightness: new Uint8ClampedArray(70),
    a: new Int8Array(70),
    b: new Int8Array(70),
  };
  return closeUp(colours, { size: grid, cellPx, ...empty }, sides, strokes);
}

describe('the part the subject lies in', () => {
  test.each<[string, Cell[], number[]]>([
    // Two cells more all round: columns 2 to 6, rows 1 to 6 for cells (4, 3) and (4, 4).
    [
      'two cells in the middle',
      [
        [4, 3],
        [4, 4],
      ],
      [8, 4, 20, 24],
    ],
    [
      'side by side',
      [
        [3, 3],
        [5, 3],
      ],
      [4, 4, 28, 20],
    ],
    ['at the upper left corner', [[0, 0]], [0, 0, 12, 12]],
    ['at the lower right corner: the last column is 3 px wide', [[9, 6]], [28, 16, 11, 12]],
    [
      'in opposite corners: all of it',
      [
        [9, 0],
        [0, 6],
      ],
      [0, 0, 39, 28],
    ],
    ['just off the border', [[2, 2]], [0, 0, 20, 20]],
  ])('%s', (_, cells, [left, top, width, height]) => {
    const found = near(cells);
    expect(found).toMatchObject({ left, top, cellPx, colours: { size: { width, height } } });
    expect(found?.cells).toMatchObject({
      width: Math.ceil((width as number) / cellPx),
      height: Math.ceil((height as number) / cellPx),
    });
  });

  test('no subject, no close-up', () => expect(near([])).toBeNull());

  test('colours and cells are those of that part', () => {
    const found = near([[4, 3]]);
    if (!found) throw new Error('no close-up');
    // Columns 2 to 6 and rows 1 to 5 of the cells: px 8 to 27 across, 4 to 23 down.
    const { lightness, a, b } = found.colours;
    const last = lightness.length - 1;
    expect([lightness[0], a[0], b[0]]).toEqual([8, 4, 4]);
    expect([lightness[last], a[last], b[last]]).toEqual([27, 23, 4]);
    expect([lightness[20], a[20]]).toEqual([8, 5]); // the second row of 20 px
    expect([...found.sides].map((side, i) => (side === 1 ? i : -1)).filter((i) => i >= 0)).toEqual([
      12,
    ]);
  });

  test('strokes keep their place and width in px', () => {
    const stroke: SubjectStroke = {
      mode: 'add',
      path: [
        [18 / 39, 14 / 28],
        [8 / 39, 4 / 28],
      ],
      brush: 6 / 39,
    };
    const [moved] = near([[4, 3]], [stroke])?.strokes ?? [];
    // In the part of 20 x 20 px from (8, 4): (10, 10) and its corner; 6 px of its long side 20.
    expect(moved?.mode).toBe('add');
    expect(moved?.path[0]?.[0]).toBeCloseTo(0.5, 12);
    expect(moved?.path[0]?.[1]).toBeCloseTo(0.5, 12);
    expect(moved?.path[1]?.[0]).toBeCloseTo(0, 12);
    expect(moved?.path[1]?.[1]).toBeCloseTo(0, 12);
    expect(moved?.brush).toBeCloseTo(0.3, 12);
  });
});

test('a mask of the part lies where the part does, with ground all round', () => {
  const found = near([[4, 3]]);
  if (!found) throw new Error('no close-up');
  const mask = new Uint8Array(20 * 20);
  mask[0] = 1;
  mask[2 * 20 + 3] = 1; // 3 right and 2 down of its corner (8, 4)
  mask[399] = 1;
  const whole = fromCloseUp(mask, found, size);
  expect(whole).toHaveLength(39 * 28);
  const places = [...whole].flatMap((side, i) =>
    side === 1 ? [[i % 39, Math.floor(i / 39)]] : [],
  );
  expect(places).toEqual([
    [8, 4],
    [11, 6],
    [27, 23],
  ]);
});

test('also in the lower right corner of the picture', () => {
  const found = near([[9, 6]]);
  if (!found) throw new Error('no close-up');
  const whole = fromCloseUp(new Uint8Array(11 * 12).fill(1), found, size);
  const rows = Array.from({ length: 28 }, (_, y) =>
    whole.subarray(y * 39, (y + 1) * 39).reduce((sum, side) => sum + side, 0),
  );
  expect(rows).toEqual([...new Array(16).fill(0), ...new Array(12).fill(11)]);
  expect(whole[27 * 39 + 27]).toBe(0);
  expect(whole[27 * 39 + 28]).toBe(1);
});

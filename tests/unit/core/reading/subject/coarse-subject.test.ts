import { describe, expect, test } from 'vitest';
import type { Point } from '../../../../../app/core/colour/lab.ts';
import { runToEnd } from '../../../../../app/core/numeric/run-to-end.ts';
import { insideStroke, paintStroke } from '../../../../../app/core/raster/paint-stroke.ts';
import { coarseSubject } from '../../../../../app/core/reading/subject/coarse-subject.ts';
import type { ColourGrid } from '../../../../../app/core/reading/subject/subject-colours.ts';
import { oval } from '../../../../support/reading/plain-raster.ts';

const size = { width: 120, height: 90 };

/** A plain ground with one darker square in its middle, sides in cells. */
function groundWithSquare(side: number): ColourGrid {
  const cells = size.width * size.height;
  const isSquare = (i: number): boolean =>
    Math.abs((i % size.width) - 60) < side / 2 &&
    Math.abs(Math.floor(i / size.width) - 45) < side / 2;
  return {
    size,
    cellPx: 1,
    lightness: Uint8ClampedArray.from({ length: cells }, (_, i) => (isSquare(i) ? 60 : 180)),
    a: new Int8Array(cells),
    b: new Int8Array(cells),
  };
}

const countOf = (map: Uint8Array): number => map.reduce((sum, own) => sum + own, 0);

/** A circle of 12 cells' radius. */
const path: Point[] = oval([0.504, 0.506], 12 / size.width, 12 / size.height);
const inside = insideStroke(path, size);

const sidesFor = (side: number): Uint8Array => {
  const circle = { mode: 'circle', brush: 0, path } as const;
  const found = runToEnd(coarseSubject(groundWithSquare(side), [circle]));
  if (!found) throw new Error('no subject');
  return found.sides;
};

test('a plain patch she circled stays hers to its line, though a speck in it differs from the rest', () => {
  const speck = 3;
  expect(speck ** 2 / countOf(inside)).toBeLessThan(0.03);
  expect(sidesFor(speck)).toEqual(inside);
});

test('what is large enough to be meant is found within her circle, and nothing else', () => {
  for (const side of [5, 9, 13]) expect(countOf(sidesFor(side))).toBe(side ** 2);
});

describe('a correction', () => {
  /** Sides after her circle round a square of 13 cells and one touch of the brush, and the cells of the touch. */
  const touched = (mode: 'add' | 'take', place: Point, brush: number) => {
    const circle = { mode: 'circle', brush: 0, path } as const;
    const found = runToEnd(
      coarseSubject(groundWithSquare(13), [circle, { mode, brush, path: [place] }]),
    );
    if (!found) throw new Error('no subject');
    const under = new Uint8Array(size.width * size.height);
    // A brush is a share of the long side, 120 cells; never under three quarters of a cell to either side.
    paintStroke(under, size, [place], Math.max(0.75, brush * 60), 1);
    return { sides: found.sides, under };
  };
  const plain = sidesFor(13);

  test.each([
    ['1.5 cells, the finest', 0.001],
    ['6 cells', 0.05],
    ['18 cells', 0.15],
  ])(
    'adds all that the brush touched, %s wide, and of a plain ground nothing beside it',
    (_, brush) => {
      const { sides, under } = touched('add', [0.2, 0.3], brush);
      expect(sides).toEqual(plain.map((own, i) => Math.max(own, under[i] as number)));
    },
  );

  test.each([
    ['1.5 cells, the finest', 0.001],
    ['6 cells', 0.05],
  ])('takes away what the brush touched, %s wide, and what lies far off stays', (_, brush) => {
    const { sides, under } = touched('take', [0.5, 0.5], brush);
    for (const [i, own] of plain.entries()) {
      if (under[i]) expect(sides[i]).toBe(0);
      else if (
        Math.hypot((i % size.width) - 59.5, Math.floor(i / size.width) - 44.5) >
        4 * 60 * brush + 3
      )
        expect(sides[i]).toBe(own);
    }
  });

  test('the later one counts where two lie over each other', () => {
    const circle = { mode: 'circle', brush: 0, path } as const;
    const at = (mode: 'add' | 'take', brush: number) => ({
      mode,
      brush,
      path: [[0.2, 0.3] as Point],
    });
    const sides = (...corrections: ReturnType<typeof at>[]) =>
      runToEnd(coarseSubject(groundWithSquare(13), [circle, ...corrections]))?.sides;
    expect(sides(at('add', 0.1), at('take', 0.2))).toEqual(plain);
    const ring = sides(at('add', 0.1), at('take', 0.05));
    const under = (brush: number) => {
      const area = new Uint8Array(plain.length);
      paintStroke(area, size, [[0.2, 0.3]], brush * 60, 1);
      return countOf(area);
    };
    expect(countOf(ring as Uint8Array)).toBe(13 ** 2 + under(0.1) - under(0.05));
  });
});

test('without a circle, or with one of no area, there is no subject', () => {
  expect(runToEnd(coarseSubject(groundWithSquare(13), []))).toBeNull();
  const line: Point[] = [
    [0.2, 0.2],
    [0.8, 0.8],
  ];
  expect(
    runToEnd(coarseSubject(groundWithSquare(13), [{ mode: 'circle', brush: 0, path: line }])),
  ).toBeNull();
});

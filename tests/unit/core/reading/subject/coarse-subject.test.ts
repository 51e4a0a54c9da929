import { expect, test } from 'vitest';
import type { Point } from '../../../../../app/core/colour/lab.ts';
import { runToEnd } from '../../../../../app/core/numeric/run-to-end.ts';
import { insideStroke } from '../../../../../app/core/raster/paint-stroke.ts';
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

import { expect, test } from 'vitest';
import type { Point } from '../../../../../app/core/colour/lab.ts';
import { insideStroke } from '../../../../../app/core/raster/paint-stroke.ts';
import { convexHull, joinLoops } from '../../../../../app/core/reading/subject/loops.ts';

const square = (left: number, top: number): Point[] => [
  [left, top],
  [left + 0.2, top],
  [left + 0.2, top + 0.2],
  [left, top + 0.2],
];

test('a hull goes round all points once and holds only corners', () => {
  const hull = convexHull([...square(0.1, 0.1), [0.2, 0.2], [0.2, 0.1], [0.15, 0.25]]);
  expect(hull).toHaveLength(4);
  expect(new Set(hull.map(String))).toEqual(new Set(square(0.1, 0.1).map(String)));
});

test('two loops joined enclose both and nothing between them', () => {
  const size = { width: 100, height: 100 };
  const inside = insideStroke(joinLoops([square(0.1, 0.1), square(0.6, 0.5)]), size);
  const area = (left: number, top: number, right: number, bottom: number): number => {
    let count = 0;
    for (let y = top; y < bottom; y++)
      for (let x = left; x < right; x++) count += inside[y * 100 + x] as number;
    return count;
  };
  expect(area(10, 10, 30, 30)).toBeGreaterThan(380);
  expect(area(60, 50, 80, 70)).toBeGreaterThan(380);
  expect(area(0, 0, 100, 100)).toBeLessThan(830);
  expect(joinLoops([square(0, 0)])).toEqual(square(0, 0));
});

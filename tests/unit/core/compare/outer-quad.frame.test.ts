import { describe, expect, test } from 'vitest';
import { outerQuad } from '../../../../app/core/compare/outer-quad.ts';
import type { PixelSize } from '../../../../app/core/raster/size.ts';

type Points = readonly (readonly [number, number])[];

/** The pixels whose middles lie within a quadrangle, clockwise, as far as there is a photo. */
const maskOf = (corners: Points, { width, height }: PixelSize): Uint8Array =>
  Uint8Array.from({ length: width * height }, (_, i) => {
    const [x, y] = [(i % width) + 0.5, Math.floor(i / width) + 0.5];
    return corners.every(([ax, ay], n) => {
      const [bx, by] = corners[(n + 1) % 4] as readonly [number, number];
      return (bx - ax) * (y - ay) - (by - ay) * (x - ax) > 0;
    })
      ? 1
      : 0;
  });

const farthest = (found: Points | null, corners: Points): number =>
  Math.max(
    ...corners.map(([x, y]) =>
      Math.min(...(found ?? []).map(([u, v]) => Math.hypot(u - x, v - y))),
    ),
  );

const size = { width: 240, height: 240 };
const quarterTurn = (points: Points): Points => points.map(([x, y]) => [240 - y, x]);

// How near corners are found is the test's own limit (own).
describe('a corner beyond the edge of the photo', () => {
  // Cut off by the top edge along 50 px: more than the shortest way round would give up.
  let sheet: Points = [
    [40, -20],
    [190, 30],
    [200, 200],
    [30, 190],
  ];
  for (const edge of ['upper', 'right', 'lower', 'left'] as const) {
    const corners = sheet;
    sheet = quarterTurn(sheet);
    test(`is drawn on to over the ${edge} edge`, () => {
      expect(farthest(outerQuad(maskOf(corners, size), size), corners)).toBeLessThan(6);
    });
  }
});

test('a sheet fills at least eight hundredths of the photo', () => {
  const square = (side: number): Points => [
    [100, 100],
    [100 + side, 100],
    [100 + side, 100 + side],
    [100, 100 + side],
  ];
  // 66 px are 7.6 % of 240 by 240, 70 px 8.5 %.
  expect(outerQuad(maskOf(square(66), size), size)).toBeNull();
  expect(farthest(outerQuad(maskOf(square(70), size), size), square(70))).toBeLessThan(1e-9);
});

test('corners go round clockwise from wherever, and a triangle is no sheet', () => {
  const corners = outerQuad(
    maskOf(
      [
        [50, 60],
        [180, 50],
        [200, 200],
        [40, 190],
      ],
      size,
    ),
    size,
  );
  const turns = corners?.map(([x, y], n) => {
    const [ax, ay] = corners[((n + 1) % 4) as 0 | 1 | 2 | 3];
    const [bx, by] = corners[((n + 2) % 4) as 0 | 1 | 2 | 3];
    return Math.sign((ax - x) * (by - ay) - (ay - y) * (bx - ax));
  });
  expect(turns).toEqual([1, 1, 1, 1]);
});

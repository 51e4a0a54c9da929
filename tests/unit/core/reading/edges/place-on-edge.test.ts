import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Point } from '../../../../../app/core/colour/lab.ts';
import {
  alongEdge,
  nearestEdge,
  placeOnEdge,
} from '../../../../../app/core/reading/edges/place-on-edge.ts';
import { madeEdge, uprightEdge } from '../../../../support/reading/made-edge.ts';

const wide = { width: 200, height: 100 };

test('distances are shares of the long side, along both sides of the picture', () => {
  const edges = [uprightEdge(0.5)];
  expect(nearestEdge(edges, [0.6, 0.5], wide, 1)).toEqual({
    index: 0,
    distance: expect.closeTo(0.1, 9),
    point: [0.5, 0.5],
  });
  // 0.1 of the height is 10 px: 0.05 of the long side.
  expect(nearestEdge(edges, [0.5, 0.1], wide, 1)?.distance).toBeCloseTo(0.05, 9);
});

test('a segment is met between its points, not only at them', () => {
  const slanting = madeEdge([
    [0, 0],
    [1, 1],
  ]);
  const square = { width: 100, height: 100 };
  expect(nearestEdge([slanting], [0.25, 0.25], square, 1)?.distance).toBeCloseTo(0, 9);
  expect(nearestEdge([slanting], [0.6, 0.4], square, 1)?.distance).toBeCloseTo(Math.SQRT2 / 10, 9);
});

test('the nearer of two; none beyond reach; none among none; one may be skipped', () => {
  const edges = [uprightEdge(0.3), uprightEdge(0.6)];
  expect(nearestEdge(edges, [0.5, 0.5], wide, 1)?.index).toBe(1);
  expect(nearestEdge(edges, [0.5, 0.5], wide, 1, 1)?.index).toBe(0);
  expect(nearestEdge(edges, [0.45, 0.5], wide, 0.02)).toBeNull();
  expect(nearestEdge([], [0.5, 0.5], wide, 1)).toBeNull();
  expect(nearestEdge([madeEdge([])], [0.5, 0.5], wide, 1)).toBeNull();
});

const share = fc.double({ min: 0, max: 1, noNaN: true });
const place = fc.tuple(share, share);
const path = fc.array(place, { minLength: 1, maxLength: 6 });

test('as slow looking along the edge finds it', () => {
  fc.assert(
    fc.property(path, place, (points, [x, y]) => {
      let least = Number.POSITIVE_INFINITY;
      for (let i = 0; i < points.length; i++) {
        const [x0, y0] = points[Math.max(0, i - 1)] as Point;
        const [x1, y1] = points[i] as Point;
        for (let n = 0; n <= 200; n++) {
          const [sx, sy] = [x0 + (n / 200) * (x1 - x0), y0 + (n / 200) * (y1 - y0)];
          least = Math.min(least, Math.hypot(x - sx, (y - sy) / 2));
        }
      }
      const found = nearestEdge([madeEdge(points)], [x, y], wide, 9)?.distance as number;
      expect(found).toBeLessThanOrEqual(least + 1e-9);
      expect(found).toBeGreaterThan(least - 0.005);
    }),
    { seed: 3, numRuns: 100 },
  );
});

test('half way along is measured in px, not in shares', () => {
  const corner = madeEdge([
    [0, 0],
    [0.5, 0],
    [0.5, 1],
  ]);
  expect(alongEdge(corner, 0.5, wide)).toEqual([0.5, 0]);
  expect(alongEdge(corner, 1, wide)).toEqual([0.5, 1]);
  expect(alongEdge(madeEdge([[0.2, 0.3]]), 0.5, wide)).toEqual([0.2, 0.3]);
});

test('a place on an edge finds that edge again, also where others meet or cross it', () => {
  const edges = [
    uprightEdge(0.5),
    madeEdge([
      [0.2, 0.5],
      [0.8, 0.5],
    ]),
    madeEdge([
      [0.5, 0.8],
      [0.9, 0.9],
    ]),
  ];
  edges.forEach((_, i) => {
    for (const touched of [undefined, [0.5, 0.5], [0.5, 0.8]] as const) {
      const spot = placeOnEdge(edges, i, wide, touched) as Point;
      expect(nearestEdge(edges, spot, wide, 0.02)?.index).toBe(i);
    }
  });
  expect(placeOnEdge(edges, 0, wide, [0.52, 0.3])).toEqual([0.5, 0.3]);
  expect(placeOnEdge(edges, 9, wide)).toBeNull();
});

import { expect, test } from 'vitest';
import type { Point } from '../../../../app/core/colour/lab.ts';
import { resampleLine, simplifyLine, smoothLine } from '../../../../app/core/raster/smooth-line.ts';

/** How much a line turns in all, radians. */
function turning(points: readonly Point[]): number {
  let sum = 0;
  for (let i = 1; i + 1 < points.length; i++) {
    const [a, b, c] = [points[i - 1], points[i], points[i + 1]] as [Point, Point, Point];
    const turn = Math.atan2(c[1] - b[1], c[0] - b[0]) - Math.atan2(b[1] - a[1], b[0] - a[0]);
    sum += Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn)));
  }
  return sum;
}

test('stairs become a straight line, its ends stay', () => {
  const stairs = Array.from(
    { length: 81 },
    (_, i): Point => [Math.ceil(i / 2) / 4, Math.floor(i / 2) / 4],
  );
  const smooth = smoothLine(stairs);
  expect(turning(stairs)).toBeGreaterThan(100);
  expect(turning(smooth)).toBeLessThan(1);
  expect(smooth.length).toBeLessThan(8);
  expect([smooth[0], smooth.at(-1)]).toEqual([stairs[0], stairs.at(-1)]);
});

test('a circle stays a closed circle of its size', () => {
  const circle = Array.from({ length: 201 }, (_, i): Point => {
    const angle = ((i % 200) * Math.PI) / 100;
    return [50 + 20 * Math.cos(angle), 50 + 20 * Math.sin(angle)];
  });
  const smooth = smoothLine(circle);
  expect(smooth[0]).toEqual(smooth.at(-1));
  for (const [x, y] of smooth) expect(Math.hypot(x - 50, y - 50)).toBeCloseTo(20, 0);
});

test('a corner is rounded by less than a millimetre, a straight line left alone', () => {
  const corner: Point[] = [
    [0, 0],
    [30, 0],
    [30, 30],
  ];
  const nearest = Math.min(...smoothLine(corner).map(([x, y]) => Math.hypot(x - 30, y)));
  expect(nearest).toBeLessThan(1);
  expect(
    smoothLine([
      [1, 1],
      [40, 9],
    ]),
  ).toEqual([
    [1, 1],
    [40, 9],
  ]);
  expect(smoothLine([])).toEqual([]);
});

test('a right angle is cut back by 0.32 mm along either side: two means over five places, 0.4 mm apart', () => {
  // 5 x 5 sums of two steps of -2 to 2 places have a mean size of 1.6; half of that, to one side, is 0.8 places.
  const corner: Point[] = [
    [0, 0],
    [30, 0],
    [30, 30],
  ];
  const nearest = smoothLine(corner).toSorted(
    ([x, y], [u, v]) => Math.hypot(x - 30, y) - Math.hypot(u - 30, v),
  )[0];
  expect(nearest?.[0]).toBeCloseTo(30 - 0.32, 9);
  expect(nearest?.[1]).toBeCloseTo(0.32, 9);
});

test('a large circle is drawn in straight pieces that stay within 0.08 mm of it', () => {
  const radius = 100;
  const circle = Array.from({ length: 1601 }, (_, i): Point => {
    const angle = ((i % 1600) * Math.PI) / 800;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });
  const smooth = smoothLine(circle);
  const away = smooth.slice(1).map(([x, y], i) => {
    const [u, v] = smooth[i] as Point;
    return radius - Math.hypot((x + u) / 2, (y + v) / 2); // at the middle of a piece
  });
  expect(Math.max(...away)).toBeLessThan(0.1);
  expect(Math.max(...away)).toBeGreaterThan(0.08 / 4); // pieces are halved: one more would be a quarter of the limit
  expect(smooth.length).toBeLessThan(130);
});

test('of a line of straight pieces the points off it by more than the limit are kept, farthest first', () => {
  const kept = (y: readonly number[], within: number) =>
    simplifyLine(
      y.map((_, i) => i),
      y,
      within,
    );
  expect(kept([0, 0, 0, 0], 0)).toEqual([0, 3]);
  expect(kept([0, 1, 0], 1)).toEqual([0, 2]); // as far as the limit is not further
  expect(kept([0, 1.01, 0], 1)).toEqual([0, 1, 2]);
  expect(kept([0, 2, 3, 2, 0], 1)).toEqual([0, 2, 4]);
  expect(kept([0, 3, 0, 3, 0], 1)).toEqual([0, 1, 2, 3, 4]);
  expect(kept([5, 9], 1)).toEqual([0, 1]);
  expect(kept([5], 1)).toEqual([0]);
  // Beyond an end of its piece a point is as far as from that end.
  expect(simplifyLine([0, -2, 4], [0, 0, 0], 1)).toEqual([0, 1, 2]);
  expect(simplifyLine([0, 6, 4], [0, 0, 0], 1)).toEqual([0, 1, 2]);
  // Where a piece ends where it began, from that place.
  expect(simplifyLine([1, 1, 1], [0, 3, 0], 1)).toEqual([0, 1, 2]);
  expect(simplifyLine([1, 1, 1], [0, 1, 0], 1)).toEqual([0, 2]);
});

test('a straight line is taken up at even distances, its ends kept; a closed one begins once', () => {
  const straight = { places: Float32Array.from({ length: 42 }, (_, i) => i >> 1), closed: false };
  for (let i = 1; i < 42; i += 2) straight.places[i] = 7;
  const even = resampleLine(straight, 4);
  expect([...even.places]).toEqual([0, 7, 4, 7, 8, 7, 12, 7, 16, 7, 20, 7]);
  expect(even.stepPx).toBe(4);
  // 20 px in steps of about 6: three of 20 / 3.
  expect(resampleLine(straight, 6).stepPx).toBeCloseTo(20 / 3, 6);
  // Two steps at least.
  expect([...resampleLine(straight, 50).places]).toEqual([0, 7, 10, 7, 20, 7]);

  const side = 40;
  const corners = [
    ...Array.from({ length: side }, (_, i) => [i, 0]),
    ...Array.from({ length: side }, (_, i) => [side, i]),
    ...Array.from({ length: side }, (_, i) => [side - i, side]),
    ...Array.from({ length: side + 1 }, (_, i) => [0, side - i]),
  ];
  const closed = resampleLine({ places: Float32Array.from(corners.flat()), closed: true }, 8);
  // 160 px round, less what four corners lose to a mean over nine places: 19 steps.
  expect(closed.places).toHaveLength(2 * 19);
  expect(closed.closed).toBe(true);
  expect(closed.stepPx * 19).toBeGreaterThan(150);
  expect(closed.stepPx * 19).toBeLessThan(158);
  for (let n = 0; n < 19; n++) {
    const [x, y] = closed.places.subarray(2 * n, 2 * n + 2) as unknown as [number, number];
    const [u, v] = closed.places.subarray((2 * n + 2) % 38, ((2 * n + 2) % 38) + 2);
    const apart = Math.hypot((u as number) - x, (v as number) - y);
    expect(apart).toBeGreaterThan(0.8 * closed.stepPx);
    expect(apart).toBeLessThan(1.001 * closed.stepPx);
  }
});

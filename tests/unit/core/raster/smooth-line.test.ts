import { expect, test } from 'vitest';
import type { Point } from '../../../../app/core/colour/lab.ts';
import { smoothLine } from '../../../../app/core/raster/smooth-line.ts';

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

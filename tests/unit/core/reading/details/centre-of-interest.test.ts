import { expect, test } from 'vitest';
import type { Point } from '../../../../../app/core/colour/lab.ts';
import { interestIn } from '../../../../../app/core/reading/details/centre-of-interest.ts';

// Which figures: (own), as the planner's.
const size = { width: 40, height: 30 }; // its diagonal is 50

test('all places count alike where nothing gathers attention', () => {
  const near = interestIn(null, null, size);
  expect([near(0, 0), near(0.5, 0.5)]).toEqual([0.6, 0.6]);
  expect(interestIn(new Uint8Array(1200), [], size)(0.1, 0.9)).toBe(0.6);
});

test('1 in the subject, less the further away, never under 0.3', () => {
  const mask = Uint8Array.from({ length: 1200 }, (_, i) => {
    const [x, y] = [(i % 40) - 9.5, Math.floor(i / 40) - 9.5];
    return x * x + y * y < 36 ? 1 : 0;
  });
  const near = interestIn(mask, null, size);
  expect(near(10 / 40, 10 / 30)).toBe(1);
  expect(near(15 / 40, 10 / 30)).toBe(1);
  // 1/e lies 0.3 of the diagonal, 15 px, outside the edge at 6 px.
  expect(near(31 / 40, 10 / 30)).toBeCloseTo(Math.exp(-1), 1);
  expect(near(1, 1)).toBe(0.3);
});

test('without a subject, by the circle round what stands out; with one, by the subject', () => {
  const circle: Point[] = [
    [0.75, 0.9],
    [0.95, 0.9],
    [0.85, 0.9 - 4 / 30],
    [0.85, 0.9 + 4 / 30],
  ];
  const near = interestIn(null, circle, size);
  expect(near(0.85, 0.9)).toBe(1);
  expect(near(0.1, 0.1)).toBe(0.3);
  const mask = Uint8Array.from({ length: 1200 }, (_, i) => (i < 40 ? 1 : 0));
  expect(interestIn(mask, circle, size)(0.5, 0.01)).toBe(1);
});

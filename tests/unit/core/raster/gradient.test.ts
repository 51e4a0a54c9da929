import { expect, test } from 'vitest';
import { gradient } from '../../../../app/core/raster/gradient.ts';
import { seeded } from '../../../support/reading/seeded.ts';

const size = { width: 23, height: 17 };
const planeOf = (value: (x: number, y: number) => number): Float32Array =>
  Float32Array.from({ length: size.width * size.height }, (_, i) =>
    value(i % size.width, Math.floor(i / size.width)),
  );

test('a slope has its own steepness, flat has none', () => {
  const slope = gradient(
    planeOf((x, y) => 3 * x - 4 * y),
    size,
  );
  for (let y = 1; y < 16; y++) expect(slope[y * 23 + 11]).toBeCloseTo(5, 5);
  expect(
    Math.max(
      ...gradient(
        planeOf(() => 42),
        size,
      ),
    ),
  ).toBe(0);
});

test('the slow obvious way on seeded numbers gives the same, at the borders too', () => {
  const random = seeded(8);
  const plane = planeOf(() => 100 * random());
  const at = (x: number, y: number): number =>
    plane[Math.min(16, Math.max(0, y)) * 23 + Math.min(22, Math.max(0, x))] as number;
  const found = gradient(plane, size);
  for (let y = 0; y < 17; y++) {
    for (let x = 0; x < 23; x++) {
      let [across, down] = [0, 0];
      for (const [k, weight] of [1, 2, 1].entries()) {
        across += weight * (at(x + 1, y + k - 1) - at(x - 1, y + k - 1));
        down += weight * (at(x + k - 1, y + 1) - at(x + k - 1, y - 1));
      }
      expect(found[y * 23 + x]).toBeCloseTo(Math.hypot(across, down) / 8, 4);
    }
  }
});

test.each([
  [1, 1],
  [1, 5],
  [5, 1],
])('%i x %i px: finite', (width, height) => {
  const plane = Float32Array.from({ length: width * height }, (_, i) => i);
  expect(gradient(plane, { width, height }).every(Number.isFinite)).toBe(true);
});

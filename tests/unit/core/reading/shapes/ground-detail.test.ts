import { expect, test } from 'vitest';
import { groundDetail } from '../../../../../app/core/reading/shapes/ground-detail.ts';

test('once in and beside the subject, more and more to 2.25 times the area at 100 mm', () => {
  const size = { width: 800, height: 100 };
  const subject = Uint8Array.from({ length: 80_000 }, (_, i) => (i % 800 < 100 ? 1 : 0));
  const times = groundDetail(subject, size, 4);
  expect(times(50, 50)).toBe(1);
  expect(times(104, 50)).toBeLessThan(1.05);
  expect(times(100 + 4 * 50, 50)).toBeCloseTo(1.25 ** 2, 1);
  expect(times(100 + 4 * 110, 50)).toBeCloseTo(1.5 ** 2, 5);
  for (let x = 101; x < 800; x++) expect(times(x, 50)).toBeGreaterThanOrEqual(times(x - 1, 50));
});

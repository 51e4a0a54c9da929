import { describe, expect, test } from 'vitest';
import { normalTables, widthOfSigma } from '../../../../app/core/numeric/normal-curve.ts';

const { sums, densities, perUnit, reach } = normalTables;
const at = (table: Float64Array, z: number): number => table[(z + reach) * perUnit] as number;

// Abramowitz, Stegun, 'Handbook of Mathematical Functions', 1964, table 26.1.
describe.each([
  [0, 0.5, 0.3989422804],
  [0.5, 0.6914624613, 0.3520653268],
  [1, 0.8413447461, 0.2419707245],
  [2, 0.9772498681, 0.0539909665],
  [3, 0.998650102, 0.0044318484],
])('%f deviations', (z, below, density) => {
  test('share below and above', () => {
    expect(at(sums, z)).toBeCloseTo(below, 6);
    expect(at(sums, -z)).toBeCloseTo(1 - below, 6);
  });

  test('density on either side', () => {
    expect(at(densities, z)).toBeCloseTo(density, 9);
    expect(at(densities, -z)).toBeCloseTo(density, 9);
  });
});

test('the table begins with nothing and goes one entry past its reach', () => {
  expect(sums[0]).toBe(0);
  expect(sums).toHaveLength(2 * reach * perUnit + 2);
  expect(densities).toHaveLength(sums.length);
  expect(at(sums, reach)).toBeCloseTo(1, 5);
});

test('10 to 90 % of a blurred step are twice 1.28155 deviations', () => {
  expect(widthOfSigma).toBeCloseTo(2 * 1.2815515655, 4);
});

import { expect, test } from 'vitest';
import { insertionSort } from '../../../../../app/core/numeric/filter-series.ts';
import { roundToDigits } from '../../../../../app/core/reading/edges/edge-runs.ts';
import { seeded } from '../../../../support/reading/seeded.ts';

test('numbers are cut as toFixed cuts them, ties and signs too', () => {
  const random = seeded(8);
  const odd = [0, -0, 0.5, 1.005, 2.675, -1.45, 1e21, -1e-9, 0.00005, Number.NaN];
  for (const value of [...odd, ...Array.from({ length: 400 }, () => 400 * random() - 100)]) {
    for (const digits of [1, 2, 4, 5]) {
      expect(roundToDigits(value, digits)).toBe(Number(value.toFixed(digits)));
    }
  }
  for (let n = 0; n < 100; n++) expect(roundToDigits(n / 8, 2)).toBe(Number((n / 8).toFixed(2)));
});

test('a few numbers are sorted as the long way does it, the rest left alone', () => {
  const random = seeded(9);
  for (let count = 0; count < 33; count++) {
    const values = Float64Array.from({ length: 40 }, () => Math.floor(9 * random()) - 4.5);
    const wanted = [...values.slice(0, count).sort(), ...values.slice(count)];
    insertionSort(values, count);
    expect([...values]).toEqual(wanted);
  }
});

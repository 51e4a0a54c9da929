import { expect, test } from 'vitest';
import { keptBands } from '../../../../../app/core/reading/values/list-bands.ts';

// Limits and figures are (own): the docstrings of what is tested say why.
test('a band that lost all its shapes leaves its range to its neighbours', () => {
  expect(keptBands([0, 5, 0, 7, 9], [20, 40, 70])).toEqual([
    { was: 1, band: 1, from: 55, to: 100 },
    { was: 3, band: 2, from: 20, to: 55 },
    { was: 4, band: 3, from: 0, to: 20 },
  ]);
  expect(keptBands([0, 0, 3], [50])).toEqual([{ was: 2, band: 1, from: 0, to: 100 }]);
});

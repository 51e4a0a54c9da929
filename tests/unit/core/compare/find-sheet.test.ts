import { expect, test } from 'vitest';
import { surenessOf } from '../../../../app/core/compare/find-sheet.ts';
import type { SettledPlace } from '../../../../app/core/compare/settle-place.ts';

// Corners of 70 sheets photographed by chance (own): alike by 0.95 and more, no corner was farther off than its doubt, whatever
// lines showed beside it; the outer edge of a border shows along all four sides.
const place = (doubt: number, more: Partial<SettledPlace> = {}): SettledPlace => ({
  ...{ toPhoto: new Float64Array(9), doubt, agreeing: 0, contradicting: 4 },
  ...more,
});

test('a picture that is all but the same is believed beside the lines of its border', () => {
  expect(surenessOf(0.97, place(0.0063), 0)).toBe('fairly sure');
  expect(surenessOf(0.9, place(0.0063), 0)).toBe('not sure');
});

test('not where its corners may be farther off, or parts of it lie elsewhere', () => {
  expect(surenessOf(0.97, place(0.0075), 0)).toBe('not sure');
  expect(surenessOf(0.97, place(0.0063), 0.4)).toBe('not sure');
});

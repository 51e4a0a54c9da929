import { expect, test } from 'vitest';
import { pixelStates } from '../../../../app/core/compare/measured-sheet.ts';
import { shapeDifferences, shapesOf } from '../../../../app/core/compare/shape-differences.ts';

// A sheet of 40 by 20 px, its left half of one slot, its right of another; what counts is counted by hand (own).
const size = { width: 40, height: 20 };
const count = size.width * size.height;
const slotMap = Uint8Array.from({ length: count }, (_, i) => (i % 40 < 20 ? 0 : 1));
const planes = (lightness: (x: number, y: number) => number) => ({
  lightness: Float32Array.from({ length: count }, (_, i) => lightness(i % 40, Math.floor(i / 40))),
  a: new Float32Array(count).fill(3),
  b: new Float32Array(count).fill(-4),
});
const states = new Uint8Array(count).fill(pixelStates.counts);

test('each slot by the pixels of its own that lie two and more from its border', () => {
  // The right half came 10 too dark; by the border, two px of either side, the sheet is no measure of anything.
  const expected = planes((x) => (x < 20 ? 80 : 60));
  const measured = planes((x) => (x < 18 ? 80 : x < 22 ? 5 : 50));
  const found = shapeDifferences(shapesOf(slotMap, size), size, expected, { ...measured, states });
  expect(found).toHaveLength(2);
  for (const [n, one] of found.entries()) {
    expect(one).toMatchObject({ slot: n, share: 0.5, expected: [[80, 60][n], 3, -4] });
    expect(one.measured).toEqual([[80, 50][n], 3, -4]);
    expect(one.measuredShare).toBeCloseTo((18 * 20) / count, 12);
    expect(one.at[0]).toBeCloseTo(0.25 + 0.5 * n, 12);
    expect(one.at[1]).toBeCloseTo(0.5, 12);
  }
});

test('what does not count is not measured; a slot without any is left out', () => {
  const shine = states.map((state, i) => (i % 40 < 20 ? state + 1 : state));
  const upper = states.map((state, i) => (i < count / 2 ? state : state + 1));
  const both = planes(() => 70);
  const of = (own: Uint8Array) =>
    shapeDifferences(shapesOf(slotMap, size), size, both, { ...both, states: own });
  expect(of(shine).map(({ slot }) => slot)).toEqual([1]);
  expect(of(upper).map(({ measuredShare }) => measuredShare)).toEqual([0.225, 0.225]);
});

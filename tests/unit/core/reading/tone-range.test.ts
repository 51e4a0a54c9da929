import { describe, expect, test } from 'vitest';
import type { Slot } from '../../../../app/core/reading/slot.ts';
import {
  canOpenUp,
  onTheSheet,
  rangeIn,
  retargeted,
  toneRange,
} from '../../../../app/core/reading/tone-range.ts';

// Limits and figures are (own): the docstrings of what is tested say why.
describe('as photographed', () => {
  const range = toneRange('photographed', 5, 99, 25, 95);

  test('values that paint reaches stay, the top ends at the paper', () => {
    for (const lightness of [29, 45, 60, 80, 94.9])
      expect(onTheSheet(range, lightness)).toBe(lightness);
    expect(onTheSheet(range, 99)).toBe(95);
  });

  test('what is darker is pressed together with a little above it, and never under the darkest paint', () => {
    expect(onTheSheet(range, 5)).toBe(25);
    expect(onTheSheet(range, 17)).toBeCloseTo(27, 9); // half of the way from 5 to 29, where all is kept again
    expect(onTheSheet(range, 2)).toBe(25);
  });

  test('nothing is pressed where paint reaches every dark', () => {
    const pale = toneRange('photographed', 40, 90, 15, 95);
    expect(pale.dark).toBe(40);
    for (const lightness of [20, 40, 41, 90]) expect(onTheSheet(pale, lightness)).toBe(lightness);
  });

  test('lighter stays lighter', () => {
    const steps = Array.from({ length: 201 }, (_, n) => onTheSheet(range, n / 2));
    for (const [n, step] of steps.slice(1).entries()) {
      expect(step).toBeGreaterThanOrEqual(steps[n] as number);
    }
  });
});

describe('opened up', () => {
  test('the lightest becomes paper, the darkest stays', () => {
    const opened = toneRange('opened', 40, 75, 15, 95);
    expect(onTheSheet(opened, 75)).toBe(95);
    expect(onTheSheet(opened, 40)).toBe(40);
    expect(onTheSheet(opened, 57.5)).toBe(67.5); // half of the missing 20
  });

  test('it is offered where the span is under 45', () => {
    expect(canOpenUp({ lo: 30, hi: 74 })).toBe(true);
    expect(canOpenUp({ lo: 30, hi: 76 })).toBe(false);
  });

  test('there and back the range is the same', () => {
    const asItIs = toneRange('photographed', 40, 90, 15, 95);
    expect(rangeIn('photographed', rangeIn('opened', asItIs))).toEqual(asItIs);
  });
});

test('a range kept from before there was a knee is one straight line', () => {
  const kept = { mode: 'opened', lo: 10, hi: 90, dark: 30, paper: 95, darkest: 30 } as const;
  expect(onTheSheet(kept, 10)).toBe(30);
  expect(onTheSheet(kept, 50)).toBe(62.5);
  expect(onTheSheet(kept, 95)).toBe(95);
});

test('white is near the paper and near neutral; a pale yellow is painted', () => {
  const range = toneRange('photographed', 5, 99, 25, 95);
  const slot = (lab: Slot['lab']): Slot => ({ lab }) as Slot;
  const kept = retargeted([slot([91, 2, 3]), slot([91, 0, 12]), slot([88, 0, 0])], range);
  expect(kept.map(({ reserve }) => reserve)).toEqual([true, false, false]);
});

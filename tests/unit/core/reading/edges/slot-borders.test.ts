import { describe, expect, test } from 'vitest';
import {
  firstWashIsWet,
  isMostlyLost,
  otherSide,
  outerBorders,
  passageLine,
  softShare,
  wayRound,
} from '../../../../../app/core/reading/edges/slot-borders.ts';
import type { Border } from '../../../../../app/core/reading/reading.ts';
import { madeReading } from '../../../../support/plan/made-reading.ts';

const border = (a: number, b: number, lengthMm: number, soft: number, lost = 0): Border => ({
  a,
  b,
  lengthMm,
  contrast: 20,
  soft,
  lost,
});

/** 0 beside 1, 1 beside 2, 2 beside 3. */
const chain = [border(0, 1, 30, 0.5), border(1, 2, 10, 0.2), border(2, 3, 40, 1)];

test('outer borders part what is painted from what is not', () => {
  const pairs = (slots: readonly number[]) =>
    outerBorders({ borders: chain }, slots).map(({ a, b }) => `${a}${b}`);
  expect(pairs([1, 2])).toEqual(['01', '23']);
  expect(pairs([0])).toEqual(['01']);
  expect(pairs([3])).toEqual(['23']);
  expect(pairs([0, 1, 2, 3])).toEqual([]);
  expect(pairs([])).toEqual([]);
});

describe('soft share', () => {
  test('is by length: 30 mm half soft and 10 mm hard are 15 of 40', () => {
    expect(softShare([border(0, 1, 30, 0.5), border(1, 2, 10, 0)])).toBeCloseTo(0.375, 12);
  });

  test('counts lost stretches on neither side: 12 of 40 - 10 mm', () => {
    expect(softShare([border(0, 1, 20, 0.6, 0.5), border(1, 2, 20, 0)])).toBeCloseTo(0.4, 12);
  });

  test('is 0 where nothing is seen, and never over 1', () => {
    expect(softShare([])).toBe(0);
    expect(softShare([border(0, 1, 20, 0, 1)])).toBe(0);
    expect(softShare([border(0, 1, 20, 0.8, 0.6)])).toBe(1);
    // Rounding may leave a border a hair more than wholly lost: that takes nothing from the others.
    expect(softShare([border(0, 1, 10, 0, 1.5), border(1, 2, 10, 0.5)])).toBeCloseTo(0.5, 12);
  });
});

test('the first wash goes on wet paper where more than half of its outline is soft', () => {
  const wet = (soft: number) => firstWashIsWet({ borders: [border(0, 1, 30, soft)] }, [1]);
  expect([wet(0.49), wet(0.5), wet(0.51)]).toEqual([false, false, true]);
});

test('the way round a slot: its borders, their length, and what of it is soft or lost', () => {
  const found = wayRound(
    [border(0, 1, 30, 0.5, 0.2), border(2, 1, 10, 0.9, 0.4), border(2, 3, 40, 1)],
    1,
  );
  expect(found.borders.map(({ a, b }) => [a, b])).toEqual([
    [0, 1],
    [2, 1],
  ]);
  expect(found.lengthMm).toBe(40);
  // 0.7 of 30 mm, and of 10 mm no more than all: 31 of 40.
  expect(found.soft).toBeCloseTo(31 / 40, 12);
  expect(wayRound(chain, 7)).toEqual({ borders: [], lengthMm: 0, soft: 0 });
  expect([otherSide(border(4, 6, 1, 0), 4), otherSide(border(4, 6, 1, 0), 6)]).toEqual([6, 4]);
});

describe('the line between ground and subject', () => {
  const made = (passage: string, lightness: number) => ({
    band: lightness > 90 ? 1 : 2,
    family: 1,
    share: 0.2,
    lab: [lightness, 0, 0] as const,
    passage,
  });
  /** White and mid of the ground, white, mid and dark of the subject. */
  const slots = [
    made('ground', 97),
    made('ground', 55),
    made('subject', 97),
    made('subject', 55),
    made('subject', 20),
  ];
  const lineOf = (...borders: Border[]) => passageLine(madeReading(slots, borders));

  test('leaves out borders within a passage, and those between two whites', () => {
    expect(madeReading(slots).slots.map(({ reserve }) => reserve)).toEqual([
      true,
      false,
      true,
      false,
      false,
    ]);
    const within = border(0, 1, 100, 0, 1);
    const whites = border(0, 2, 100, 0, 1);
    expect(lineOf(within, whites)).toEqual({ lengthMm: 0, lost: 0 });
    expect(lineOf(within, whites, border(1, 3, 30, 0, 0.5), border(1, 4, 10, 0, 0))).toEqual({
      lengthMm: 40,
      lost: 15 / 40,
    });
  });

  test('beside a white it is long but never lost: nothing is painted on one side', () => {
    expect(lineOf(border(0, 3, 30, 0, 1))).toEqual({ lengthMm: 30, lost: 0 });
    expect(lineOf(border(1, 2, 30, 0, 1))).toEqual({ lengthMm: 30, lost: 0 });
    expect(lineOf(border(0, 3, 30, 0, 1), border(1, 3, 10, 0, 1)).lost).toBeCloseTo(0.25, 12);
  });

  test('is mostly lost from over a half on', () => {
    const lost = (share: number) => isMostlyLost(madeReading(slots, [border(1, 3, 30, 0, share)]));
    expect([lost(0.5), lost(0.51)]).toEqual([false, true]);
  });

  test('a border of a slot that is not there counts for nothing', () => {
    expect(lineOf(border(1, 9, 30, 0, 1), border(9, 1, 30, 0, 1))).toEqual({
      lengthMm: 0,
      lost: 0,
    });
  });
});

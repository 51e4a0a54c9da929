import { describe, expect, test } from 'vitest';
import { runToEnd } from '../../../../../app/core/numeric/run-to-end.ts';
import {
  countMasses,
  washMasses,
  washShapes,
} from '../../../../../app/core/reading/shapes/wash-masses.ts';
import type { Slot } from '../../../../../app/core/reading/slot.ts';
import { madeReading, tableOf } from '../../../../support/plan/made-reading.ts';

const [plain] = madeReading(tableOf([50], [[0, 0]])).slots;
const slot = (
  band: number,
  family: number,
  lightness: number,
  share: number,
  passage = 'sheet',
): Slot => ({
  ...(plain as Slot),
  passage,
  band,
  family,
  share,
  lab: [lightness, 0, 0],
  target: [lightness, 0, 0],
});

const size = { width: 40, height: 30 };
/** One mm a pixel; shapes under 10 mm are too small for the first wash. */
const sizes = { firstWash: 10, second: 5, darks: 2 };

/** Left half of slot 0, right half of slot 1, and between them, 4 mm in each, a square of 8 mm of slot `between`. */
const squareBetween = (between: number): Uint8Array =>
  Uint8Array.from({ length: 40 * 30 }, (_, i) => {
    const [x, y] = [i % 40, Math.floor(i / 40)];
    if (x >= 16 && x < 24 && y >= 10 && y < 18) return between;
    return x < 20 ? 0 : 1;
  });

/** Which half the square has become part of in the first wash. */
function joins(slots: readonly Slot[]): 'left' | 'right' | 'neither' {
  const { map } = runToEnd(washMasses(squareBetween(2), slots, size, 1, 'firstWash', sizes));
  const own = map[14 * 40 + 20];
  return own === map[0] ? 'left' : own === map[39] ? 'right' : 'neither';
}

// Limits and figures are (own): the docstrings of what is tested say why.
describe('a shape too small joins the neighbour nearest in value', () => {
  test('the neighbour’s value is the mean of its family by area: 80 and 40 at 3 to 1 are 70', () => {
    // The square is 66: 4 from the 70 of family 1, 8 from the 58 of family 2. By the first slot alone (80), by
    // the last (40) or by both alike (60) it would be 14, 26 or 6 from family 1.
    const slots = [
      slot(2, 1, 80, 0.3),
      slot(2, 2, 58, 0.4),
      slot(2, 3, 66, 0.2),
      slot(3, 1, 40, 0.1),
    ];
    expect(joins(slots)).toBe('left');
    const nearer = slots.with(1, slot(2, 2, 66, 0.4));
    expect(joins(nearer)).toBe('right');
  });

  test.each([
    [1, 'right'],
    [2, 'left'],
  ] as const)(
    'a slot without area before the others of family %i: joined is still the %s',
    (family, side) => {
      // The square is nearest to the half whose family has no such slot.
      const [near, far] = [66, 50];
      const slots = [
        slot(3, family, 5, 0),
        slot(2, 1, family === 1 ? far : near, 0.4),
        slot(2, 2, family === 2 ? far : near, 0.4),
        slot(2, 3, 66, 0.2),
      ];
      const map = squareBetween(3).map((half) => [1, 2, 2, 3][half] as number);
      const found = runToEnd(washMasses(map, slots, size, 1, 'firstWash', sizes)).map;
      expect(found[14 * 40 + 20]).toBe(found[side === 'left' ? 0 : 39]);
    },
  );

  test('values are compared in steps of 4 L*: within one step the longer border decides', () => {
    // 66 is 0.4 from one half and 1 from the other: alike, and the half the square lies in has more of its border.
    const shifted = (left: number): Uint8Array =>
      Uint8Array.from({ length: 40 * 30 }, (_, i) => {
        const [x, y] = [i % 40, Math.floor(i / 40)];
        if (x >= left && x < left + 8 && y >= 10 && y < 18) return 2;
        return x < 20 ? 0 : 1;
      });
    const slots = [slot(2, 1, 66.4, 0.4), slot(2, 2, 65, 0.4), slot(2, 3, 66, 0.2)];
    const joined = (left: number) => {
      const { map } = runToEnd(washMasses(shifted(left), slots, size, 1, 'firstWash', sizes));
      return map[14 * 40 + left + 4] === map[0] ? 'left' : 'right';
    };
    expect([joined(13), joined(19)]).toEqual(['left', 'right']);
  });

  test('of its own passage only, however far the value', () => {
    const slots = [slot(2, 1, 20, 0.4), slot(2, 2, 66, 0.4, 'subject'), slot(2, 3, 66, 0.2)];
    expect(joins(slots)).toBe('left');
    expect(joins([slots[0] as Slot, slots[1] as Slot, slot(2, 3, 66, 0.2, 'alone')])).toBe(
      'neither',
    );
  });
});

test('smallest sizes are sides of squares on the sheet: 8 mm stand from 8 mm on', () => {
  const slots = [slot(2, 1, 80, 0.4), slot(2, 2, 60, 0.4), slot(2, 3, 66, 0.2)];
  const count = (firstWash: number, pxPerMm: number) => {
    const wished = { ...sizes, firstWash };
    return runToEnd(washMasses(squareBetween(2), slots, size, pxPerMm, 'firstWash', wished)).count;
  };
  expect([count(8, 1), count(8.1, 1)]).toEqual([3, 2]);
  // At two px a mm the square of 8 px is 4 mm wide.
  expect([count(4, 2), count(4.1, 2)]).toEqual([3, 2]);
});

test('a wash that paints nothing: no shapes, and every number unpainted', () => {
  const slots = [{ ...slot(1, 1, 97, 0.5), reserve: true }, slot(2, 2, 60, 0.5)];
  const whiteOnTheRight = squareBetween(0).map((half) => 1 - half);
  const found = runToEnd(washMasses(whiteOnTheRight, slots, size, 1, 'second', sizes));
  expect(found.count).toBe(0);
  expect(found.isPainted).toEqual([false, false]);
  expect(found.map).toEqual(whiteOnTheRight); // whites and the rest are numbers of their own
});

test('counted wash by wash, and the same with pauses', async () => {
  const slots = [slot(2, 1, 80, 0.4), slot(3, 1, 50, 0.4), slot(4, 1, 20, 0.2)];
  const slotMap = squareBetween(2);
  expect(runToEnd(countMasses(slotMap, slots, size, 1, sizes))).toEqual({
    firstWash: 1, // all of one family
    second: 1, // the right half with the square on it, one family
    darks: 1, // the square alone
  });
  let pauses = 0;
  const request = { slotMap, slots, size, pxPerMm: 1, wash: 'darks' as const, sizes };
  const { count, isPainted, map } = await washShapes(request, async () => {
    pauses++;
  });
  expect(count).toBe(1);
  expect(isPainted[map[14 * 40 + 20] as number]).toBe(true);
  expect(isPainted[map[0] as number]).toBe(false);
  expect(pauses).toBeGreaterThan(1);
  const stop = washShapes(request, () => Promise.reject(new Error('stopped')));
  await expect(stop).rejects.toThrow('stopped');
});

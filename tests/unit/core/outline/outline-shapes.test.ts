import { describe, expect, test } from 'vitest';
import { outlineShapes } from '../../../../app/core/outline/outline-shapes.ts';
import type { Reading } from '../../../../app/core/reading/reading.ts';
import type { Slot } from '../../../../app/core/reading/slot.ts';
import { madeReading, tableOf } from '../../../support/plan/made-reading.ts';

const [width, height] = [30, 24];
const plain = madeReading(tableOf([50], [[0, 0]]));
const slot = (lightness: number, changed: Partial<Slot> = {}): Slot => ({
  ...(plain.slots[0] as Slot),
  band: 2,
  lab: [lightness, 0, 0],
  target: [lightness, 0, 0],
  reserve: false,
  ...changed,
});
/** Left, right, a middle one, a dark accent, two whites. */
const slots = [
  slot(60),
  slot(60.5),
  slot(60.2),
  slot(20, { band: 3 }),
  slot(96, { band: 1, reserve: true }),
  slot(95, { band: 1, reserve: true }),
];

/** 30 x 24 px at one px a mm. Shapes stand from 10 mm on, accents from 2 mm, whites from 1 mm. */
function shapesOf(
  slotAt: (x: number, y: number) => number,
  changed: Partial<Reading> = {},
  near = 0,
) {
  const slotMap = Uint8Array.from({ length: width * height }, (_, i) =>
    slotAt(i % width, Math.floor(i / width)),
  );
  const reading = {
    ...plain,
    slots,
    raster: { width, height },
    sheet: { widthMm: width, heightMm: height },
    ...changed,
  };
  const found = outlineShapes(slotMap, reading, { firstWash: 10, darks: 2 }, () => near);
  const wholeAt = (x: number, y: number): number =>
    found.wholes[found.labels[y * width + x] as number] as number;
  return { found, wholeAt };
}
const inside = (
  x: number,
  y: number,
  left: number,
  top: number,
  wide: number,
  high: number,
): boolean => x >= left && x < left + wide && y >= top && y < top + high;
const half = (x: number): number => (x < 15 ? 0 : 1);

describe('a shape too small', () => {
  test('joins, of two neighbours of one value, the one it has more border with: 12 sides to 11', () => {
    // A square of 6 px: 6 sides left and 6 right; above it 3, 2 and 1 of a dark one, below it 2 and 4.
    const { wholeAt } = shapesOf((x, y) => {
      if (inside(x, y, 9, 9, 6, 6)) return 2;
      if (inside(x, y, 14, 7, 2, 2)) return 3;
      if (y < 9) return x < 12 ? 0 : 1;
      return x < (y < 15 ? 10 : 11) ? 0 : 1;
    });
    expect(wholeAt(11, 11)).toBe(wholeAt(29, 20));
    expect(wholeAt(11, 11)).not.toBe(wholeAt(0, 0));
  });

  test('and the other way round', () => {
    const { wholeAt } = shapesOf((x, y) => {
      if (inside(x, y, 9, 9, 6, 6)) return 2;
      if (inside(x, y, 8, 7, 2, 2)) return 3;
      if (y < 9) return x < 12 ? 0 : 1;
      return x < (y < 15 ? 10 : 13) ? 0 : 1;
    });
    expect(wholeAt(11, 11)).toBe(wholeAt(0, 20));
  });

  test.each([
    ['12 sides to 12: to the one met first, above it', 0, 0],
    ['11 to 12, as a dark one lies on its upper side: to the one below', 1, 1],
    ['10 to 12', 2, 1],
  ])('of one above and left and one below and right, %s', (_, taken, joins) => {
    const { wholeAt } = shapesOf((x, y) => {
      if (inside(x, y, 12, 9, 6, 6)) return 2;
      if (inside(x, y, 18 - taken, 7, 2, 2)) return 3;
      return y < 9 || (y < 15 && x < 12) ? 0 : 1;
    });
    expect(wholeAt(14, 11)).toBe(joins === 0 ? wholeAt(0, 0) : wholeAt(29, 23));
  });

  test('nearer in value goes before longer: steps of 4 L*', () => {
    const near = slots.with(1, slot(66)).with(2, slot(65));
    const { wholeAt } = shapesOf((x, y) => (inside(x, y, 12, 9, 6, 6) ? 2 : x < 17 ? 0 : 1), {
      slots: near,
    });
    // Five of its six columns lie among the left half's, which is 5 away; the right one is 1 away.
    expect(wholeAt(14, 11)).toBe(wholeAt(29, 11));
  });

  test('never joins over the line of the subject, nor one smaller than itself', () => {
    const parted = slots.with(2, slot(60.2, { passage: 'subject' }));
    const alone = shapesOf((x, y) => (inside(x, y, 12, 9, 6, 6) ? 2 : half(x)), { slots: parted });
    expect(alone.wholeAt(14, 11)).not.toBe(alone.wholeAt(0, 0));
    expect(alone.wholeAt(14, 11)).not.toBe(alone.wholeAt(29, 0));
    // On a dark accent of 3 px within a shape of 5: the larger one may not join it.
    const within = shapesOf((x, y) => {
      if (inside(x, y, 12, 9, 2, 2)) return 3;
      return inside(x, y, 11, 8, 5, 5) ? 2 : half(x);
    });
    expect(within.wholeAt(15, 12)).not.toBe(within.wholeAt(12, 9));
  });
});

test.each([
  ['a shape of 10 mm stands', 2, 10, 10, true],
  ['of 9 mm joins', 2, 9, 9, false],
  ['a strip under 3 mm joins, however long', 2, 2, 24, false],
  ['one of 5 mm stands from 100 mm2 on', 2, 5, 20, true],
  ['an accent of 2 mm stands', 3, 2, 2, true],
  ['of 1 mm joins', 3, 1, 1, false],
  ['a sparkle of 1 mm stands', 4, 1, 1, true],
])('%s', (_, own, wide, high, stands) => {
  const { wholeAt } = shapesOf((x, y) => (inside(x, y, 3, 0, wide, high) ? own : half(x)));
  expect(wholeAt(3, 0) !== wholeAt(0, 0)).toBe(stands);
});

test('whites that touch are one shape, whatever their slots', () => {
  const { wholeAt, found } = shapesOf((x, y) =>
    inside(x, y, 4, 4, 3, 3) ? 4 : inside(x, y, 7, 4, 3, 3) ? 5 : half(x),
  );
  expect(wholeAt(4, 4)).toBe(wholeAt(9, 6));
  expect(found.slots[found.labels[4 * width + 4] as number]).toBe(4); // that of its first pixel
});

test('a white that comes back at the end is not drawn; one kept otherwise is', () => {
  const drawn = (way: 'last' | 'round') => {
    const white = { at: [5.5 / width, 5.5 / height] as const, way };
    const { wholeAt } = shapesOf((x, y) => (inside(x, y, 4, 4, 12, 12) ? 4 : half(x)), {
      whites: [white as never],
    });
    return wholeAt(5, 5) !== wholeAt(0, 0) && wholeAt(5, 5) !== wholeAt(29, 0);
  };
  expect([drawn('last'), drawn('round')]).toEqual([false, true]);
});

test.each([
  [0.6, false],
  // 10 mm to the power 0.4 by 2 mm to the power 0.6 are 3.8 mm: 14.5 mm2 of the 16.
  [0.75, true],
  [1, true],
])('a feature of 4 mm stands by itself %s near the centre of interest: %s', (near, stands) => {
  const { wholeAt } = shapesOf((x, y) => (inside(x, y, 5, 5, 4, 4) ? 2 : 0), {}, near);
  expect(wholeAt(6, 6) !== wholeAt(20, 20)).toBe(stands);
});

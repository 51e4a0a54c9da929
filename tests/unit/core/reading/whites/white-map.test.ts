import { describe, expect, test } from 'vitest';
import { whiteOutlines } from '../../../../../app/core/raster/trace-outlines.ts';
import { whiteAt, whiteMap } from '../../../../../app/core/reading/whites/white-map.ts';
import { seeded } from '../../../../support/reading/seeded.ts';
import { slowWhites } from '../../../../support/reading/slow-whites.ts';

/** '.' is painted, digits are slots that stay white. */
const drawn = (...rows: string[]) => ({
  size: { width: rows[0]?.length ?? 0, height: rows.length },
  slotMap: Uint8Array.from(rows.join(''), (sign) => (sign === '.' ? 0 : Number(sign))),
});
const isWhite = [false, true, true];

describe('which white a pixel belongs to', () => {
  test('whites hold together over slots, not over corners', () => {
    const { size, slotMap } = drawn('1.11', '2.1.', '.2..');
    const at = (x: number, y: number) => ({ at: [(x + 0.5) / 4, (y + 0.5) / 3] as const });
    const map = whiteMap(slotMap, size, isWhite, [at(2, 1), at(0, 0), at(1, 2)]);
    expect([...map]).toEqual([2, 0, 1, 1, 2, 0, 1, 0, 0, 3, 0, 0]);
  });

  test('the same areas as the slow way, on seeded masks', () => {
    const random = seeded(11);
    for (const filled of [0.4, 0.6, 0.9]) {
      const size = { width: 37, height: 23 };
      const slotMap = Uint8Array.from({ length: 37 * 23 }, () => (random() < filled ? 1 : 0));
      const slow = slowWhites(slotMap, size);
      const whites = slow.map(({ pixels }) => {
        const pixel = pixels[Math.floor(pixels.length / 2)] as number;
        return { at: [((pixel % 37) + 0.5) / 37, (Math.floor(pixel / 37) + 0.5) / 23] as const };
      });
      const map = whiteMap(slotMap, size, isWhite, whites);
      const wanted = new Uint16Array(slotMap.length);
      slow.forEach(({ pixels }, i) => {
        for (const pixel of pixels) wanted[pixel] = i + 1;
      });
      expect(map).toEqual(wanted);
      // Each pixel side of an outline is walked along exactly once.
      const sides = whiteOutlines(map, size).reduce<number[]>((sums, { white, points }) => {
        sums[white] = (sums[white] ?? 0) + points.length / 2;
        return sums;
      }, []);
      expect(sides).toEqual(slow.map((one) => one.sides));
    }
  });
});

test('a touch finds the white under it, or the nearest one close by', () => {
  const size = { width: 100, height: 50 };
  const map = new Uint16Array(5000);
  map[20 * 100 + 10] = 1;
  map[20 * 100 + 13] = 2;
  expect(whiteAt(map, size, [0.105, 0.41])).toBe(0);
  expect(whiteAt(map, size, [0.125, 0.41])).toBe(1);
  expect(whiteAt(map, size, [0.2, 0.41])).toBe(-1);
  expect(whiteAt(map, size, [1, 1])).toBe(-1);
});

test('a ring has an outer and an inner outline, through the middles of pixel sides', () => {
  const { size, slotMap } = drawn('.....', '.111.', '.1.1.', '.111.');
  const map = whiteMap(slotMap, size, isWhite, [{ at: [0.3, 0.4] }]);
  const outlines = whiteOutlines(map, size);
  expect(outlines.map(({ points }) => points.length / 2)).toEqual([12, 4]);
  // The other way round, so that the hole is not filled.
  expect(outlines[1]?.points).toEqual([2.5, 3, 3, 2.5, 2.5, 2, 2, 2.5]);
});

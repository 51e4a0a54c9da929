import { describe, expect, test } from 'vitest';
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

  test('of two places in one white the first names it; a place on paint names nothing', () => {
    const { size, slotMap } = drawn('11..', '1...', '...2');
    const at = (x: number, y: number) => ({ at: [(x + 0.5) / 4, (y + 0.5) / 3] as const });
    const map = whiteMap(slotMap, size, isWhite, [at(2, 1), at(0, 1), at(1, 0), at(3, 2)]);
    expect([...map]).toEqual([2, 2, 0, 0, 2, 0, 0, 0, 0, 0, 0, 4]);
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

import { expect, test } from 'vitest';
import { tableOf } from '../../../../app/core/colour/lab.ts';
import { paintSlots, shrinkSlots } from '../../../../app/core/raster/paint-slots.ts';

test('a slot map is painted by its table; a slot without a colour is paper', () => {
  const out = new Uint8ClampedArray(12);
  paintSlots(new Uint8Array([1, 0, 7]), new Uint8ClampedArray([10, 20, 30, 40, 50, 60]), out);
  expect([...out]).toEqual([40, 50, 60, 255, 10, 20, 30, 255, 255, 255, 255, 255]);
  expect(tableOf([[100, 0, 0]])).toEqual(new Uint8ClampedArray([255, 255, 255]));
});

test('a slot map made smaller takes the nearest pixel, and is never empty on a side', () => {
  const map = Uint8Array.from({ length: 16 }, (_, i) => i);
  expect(shrinkSlots(map, 4, 4, 4)).toEqual({ slotMap: map, width: 4, height: 4 });
  expect(shrinkSlots(map, 4, 4, 9).width).toBe(4); // never enlarged
  // Of every two by two the lower right one: its middle is nearest to theirs.
  expect(shrinkSlots(map, 4, 4, 2)).toEqual({
    slotMap: Uint8Array.of(5, 7, 13, 15),
    width: 2,
    height: 2,
  });
  expect(shrinkSlots(map, 16, 1, 4)).toEqual({
    slotMap: Uint8Array.of(2, 6, 10, 14),
    width: 4,
    height: 1,
  });
  expect(shrinkSlots(map, 1, 16, 4)).toMatchObject({ width: 1, height: 4 });
});

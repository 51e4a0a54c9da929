import { expect, test } from 'vitest';
import { tableOf } from '../../../../app/core/colour/lab.ts';
import { paintSlots } from '../../../../app/core/raster/paint-slots.ts';

test('a slot map is painted by its table; a slot without a colour is paper', () => {
  const out = new Uint8ClampedArray(12);
  paintSlots(new Uint8Array([1, 0, 7]), new Uint8ClampedArray([10, 20, 30, 40, 50, 60]), out);
  expect([...out]).toEqual([40, 50, 60, 255, 10, 20, 30, 255, 255, 255, 255, 255]);
  expect(tableOf([[100, 0, 0]])).toEqual(new Uint8ClampedArray([255, 255, 255]));
});

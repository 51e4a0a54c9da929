import { expect, test } from 'vitest';
import { centredCrop, turnedSize } from '../../../app/model/reference.ts';
import { sheetOf } from '../../../app/model/sheet.ts';

const photo = { width: 4000, height: 3000 };

test('the centred cut of a 4:3 photo for A4 lying across keeps the full width', () => {
  const { centre, size, turn } = centredCrop(photo, sheetOf('a4', 'across'));
  expect(centre).toEqual([0.5, 0.5]);
  expect(turn).toBe(0);
  expect(size[0]).toBe(1);
  expect(size[1]).toBeCloseTo((4000 * 210) / 297 / 3000, 12);
});

test('turned by a quarter, the sides are counted in the turned picture', () => {
  const { size } = centredCrop(photo, sheetOf('a4', 'upright'), 90);
  expect(size[1]).toBeCloseTo(4000 / 3000, 12);
  expect(size[0] * 4000).toBeCloseTo((4000 * 210) / 297, 9);
});

test('straightening a square by 45 degrees leaves 1 / √2 of its side (plane geometry)', () => {
  const square = { format: 'own', widthMm: 100, heightMm: 100 } as const;
  const { size } = centredCrop({ width: 800, height: 800 }, square, 45);
  expect(size[0]).toBeCloseTo(Math.SQRT1_2, 12);
});

test('size after quarter turns', () => {
  expect(turnedSize(photo, 0)).toEqual(photo);
  expect(turnedSize(photo, 93)).toEqual({ width: 3000, height: 4000 });
  expect(turnedSize(photo, -177)).toEqual(photo);
  expect(turnedSize(photo, 270)).toEqual({ width: 3000, height: 4000 });
});

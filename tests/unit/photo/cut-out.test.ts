import { expect, test } from 'vitest';
import { cutOutOf } from '../../../app/model/cut-out.ts';
import { centredCrop } from '../../../app/model/reference.ts';
import { sheetOf } from '../../../app/model/sheet.ts';

const photo = { width: 400, height: 300 };
const whole = { centre: [0.5, 0.5], size: [1, 1], turn: 0 } as const;

const place = (m: readonly number[], x: number, y: number): [number, number] => [
  (m[0] ?? 0) * x + (m[2] ?? 0) * y + (m[4] ?? 0),
  (m[1] ?? 0) * x + (m[3] ?? 0) * y + (m[5] ?? 0),
];

test('the whole photo stays where it is', () => {
  expect(cutOutOf(photo, whole)).toMatchObject({ width: 400, height: 300, whole: true });
  expect(place(cutOutOf(photo, whole).matrix, 7, 9)).toEqual([7, 9]);
});

test('a quarter turn clockwise brings the left lower corner to the left upper one', () => {
  const turned = cutOutOf(photo, { centre: [0.5, 0.5], size: [300 / 400, 400 / 300], turn: 90 });
  expect([turned.width, turned.height]).toEqual([300, 400]);
  expect(place(turned.matrix, 0, 300)).toEqual([0, 0]);
  expect(place(turned.matrix, 0, 0)).toEqual([300, 0]);
});

test('straightening keeps the centre and every corner of the cut inside the photo', () => {
  for (const turn of [-12, 3.5, 8, 87, 181]) {
    const crop = centredCrop(photo, sheetOf('quarter', 'across'), turn);
    const cut = cutOutOf(photo, crop);
    const [x, y] = place(cut.matrix, 200, 150);
    expect(Math.abs(x - cut.width / 2) + Math.abs(y - cut.height / 2)).toBeLessThan(1e-9);
    const [a, b] = cut.matrix;
    for (const [u, v] of [
      [0, 0],
      [cut.width, 0],
      [0, cut.height],
      [cut.width, cut.height],
    ] as const) {
      const px = a * (u - cut.width / 2) + b * (v - cut.height / 2) + 200;
      const py = -b * (u - cut.width / 2) + a * (v - cut.height / 2) + 150;
      expect(Math.min(px, 400 - px, py, 300 - py)).toBeGreaterThan(-1);
    }
  }
});

test('never empty', () => {
  expect(cutOutOf({ width: 5000, height: 1 }, { ...whole, size: [0.2, 0.1] })).toMatchObject({
    width: 1000,
    height: 1,
  });
});

test('a crop that is no part of the photo is refused before any canvas is made', () => {
  for (const size of [
    [Number.NaN, 1],
    [0, 1],
    [100, 100],
  ] as const) {
    expect(() => cutOutOf(photo, { ...whole, size })).toThrow(RangeError);
  }
});

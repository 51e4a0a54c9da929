import { expect, test } from 'vitest';
import {
  centredCrop,
  cutOutOf,
  fitSheet,
  hasShape,
  quartersOf,
  straighteningOf,
  turnedSize,
  turnOf,
  wrappedTurn,
} from '../../../../app/core/reference/reference.ts';
import { sheetOf } from '../../../../app/core/reference/sheet.ts';

const photo = { width: 400, height: 300 };
const whole = { centre: [0.5, 0.5], size: [1, 1], turn: 0 } as const;

const place = (m: readonly number[], x: number, y: number): [number, number] => [
  (m[0] ?? 0) * x + (m[2] ?? 0) * y + (m[4] ?? 0),
  (m[1] ?? 0) * x + (m[3] ?? 0) * y + (m[5] ?? 0),
];

// A4 is 210 x 297 mm: ISO 216:2007; the sizes of photos are made up.
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

const referencePhoto = { width: 4000, height: 3000 };

test('the centred cut of a 4:3 photo for A4 lying across keeps the full width', () => {
  const { centre, size, turn } = centredCrop(referencePhoto, sheetOf('a4', 'across'));
  expect(centre).toEqual([0.5, 0.5]);
  expect(turn).toBe(0);
  expect(size[0]).toBe(1);
  expect(size[1]).toBeCloseTo((4000 * 210) / 297 / 3000, 12);
});

test('turned by a quarter, the sides are counted in the turned picture', () => {
  const { size } = centredCrop(referencePhoto, sheetOf('a4', 'upright'), 90);
  expect(size[1]).toBeCloseTo(4000 / 3000, 12);
  expect(size[0] * 4000).toBeCloseTo((4000 * 210) / 297, 9);
});

test('straightening a square by 45 degrees leaves 1 / √2 of its side (plane geometry)', () => {
  const square = { format: 'own', widthMm: 100, heightMm: 100 } as const;
  const { size } = centredCrop({ width: 800, height: 800 }, square, 45);
  expect(size[0]).toBeCloseTo(Math.SQRT1_2, 12);
});

test('size after quarter turns', () => {
  expect(turnedSize(referencePhoto, 0)).toEqual(referencePhoto);
  expect(turnedSize(referencePhoto, 93)).toEqual({ width: 3000, height: 4000 });
  expect(turnedSize(referencePhoto, -177)).toEqual(referencePhoto);
  expect(turnedSize(referencePhoto, 270)).toEqual({ width: 3000, height: 4000 });
});

test('a turn is quarters, 0 to 3, and what is straightened; backwards counts from the end', () => {
  expect([0, 44, 46, 90, 180, 270, 316, 360, 450].map(quartersOf)).toEqual([
    0, 0, 1, 1, 2, 3, 0, 0, 1,
  ]);
  expect([-90, -180, -270, -360, -450].map((turn) => quartersOf(turn) + 0)).toEqual([
    3, 2, 1, 0, 3,
  ]);
  expect([0, 7, 97, 83, 176].map(straighteningOf)).toEqual([0, 7, 7, -7, -4]);
  expect([0, 359, 360, 725, -1, -361].map(wrappedTurn)).toEqual([0, 359, 0, 5, 359, 359]);
  expect([turnOf(1, 4), turnOf(0, -4), turnOf(2, 30), turnOf(3, -30)]).toEqual([94, 356, 190, 260]);
});

test('a crop has the shape of its sheet, but for rounding; another one is seen', () => {
  const photo = { width: 4000, height: 3000 };
  const sheet = { format: 'own', widthMm: 381, heightMm: 279 } as const;
  const shape = sheet.widthMm / sheet.heightMm;
  for (const turn of [0, 90, 7])
    expect(hasShape(photo, centredCrop(photo, sheet, turn), shape)).toBe(true);
  expect(hasShape({ width: 3000, height: 4000 }, centredCrop(photo, sheet), shape)).toBe(false);
  expect(
    hasShape({ width: 1, height: 1 }, fitSheet({ width: 1, height: 1 }, sheet).crop, shape),
  ).toBe(true);
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { PixelSize } from '../../../../app/core/raster/size.ts';
import {
  areaShare,
  fittedToSheet,
  movedCrop,
  resizedCrop,
  scaledCrop,
  scaleOf,
  shapeOf,
  straightenedCrop,
  turnedCrop,
} from '../../../../app/core/reference/move-crop.ts';
import { type Crop, centredCrop } from '../../../../app/core/reference/reference.ts';
import type { Sheet } from '../../../../app/core/reference/sheet.ts';

const side = fc.integer({ min: 40, max: 12000 });
const photos = fc.record({ width: side, height: side });
const mm = fc.double({ min: 50, max: 2000, noNaN: true });
const sheets: fc.Arbitrary<Sheet> = fc.record({
  format: fc.constant('own' as const),
  widthMm: mm,
  heightMm: mm,
});

type Move = (photo: PixelSize, crop: Crop, sheet: Sheet) => [Crop, Sheet];
const shift = fc.double({ min: -2, max: 2, noNaN: true });
const moves: fc.Arbitrary<Move> = fc.oneof(
  fc.tuple(shift, shift).map(
    ([right, down]): Move =>
      (photo, crop, sheet) => [
        movedCrop(photo, crop, right * photo.width, down * photo.height),
        sheet,
      ],
  ),
  fc.double({ min: 0.1, max: 4, noNaN: true }).map(
    (factor): Move =>
      (photo, crop, sheet) => [resizedCrop(photo, crop, factor), sheet],
  ),
  fc.double({ min: -15, max: 15, noNaN: true }).map(
    (degrees): Move =>
      (photo, crop, sheet) => [straightenedCrop(photo, crop, degrees), sheet],
  ),
  fc.integer({ min: -5, max: 5 }).map(
    (quarters): Move =>
      (photo, crop, sheet) => [
        turnedCrop(photo, crop, quarters),
        quarters % 2 === 0 ? sheet : { ...sheet, widthMm: sheet.heightMm, heightMm: sheet.widthMm },
      ],
  ),
  sheets.map(
    (other): Move =>
      (photo, crop) => [fittedToSheet(photo, crop, other), other],
  ),
);

/** Farthest a corner of the cut lies outside the photo, px; found from the corners themselves. */
function farthestOutside(photo: PixelSize, crop: Crop): number {
  const angle = (-crop.turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  let farthest = -Infinity;
  for (const u of [-0.5, 0.5])
    for (const v of [-0.5, 0.5]) {
      const right = u * crop.size[0] * photo.width;
      const down = v * crop.size[1] * photo.height;
      const x = crop.centre[0] * photo.width + cos * right - sin * down;
      const y = crop.centre[1] * photo.height + sin * right + cos * down;
      farthest = Math.max(farthest, -x, x - photo.width, -y, y - photo.height);
    }
  return farthest;
}

describe('whatever is done, in any order', () => {
  const anything = fc.property(
    photos,
    sheets,
    fc.array(moves, { maxLength: 12 }),
    (photo, first, done) => {
      let sheet = first;
      let crop = centredCrop(photo, sheet);
      for (const move of done) {
        [crop, sheet] = move(photo, crop, sheet);
        expect(farthestOutside(photo, crop)).toBeLessThan(1e-6);
        const wanted = sheet.widthMm / sheet.heightMm;
        expect(Math.abs(shapeOf(photo, crop) / wanted - 1)).toBeLessThan(0.001);
        expect(crop.turn).toBeGreaterThanOrEqual(0);
        expect(crop.turn).toBeLessThan(360);
        const largest = areaShare(centredCrop(photo, sheet, crop.turn));
        expect(areaShare(crop)).toBeGreaterThan(Math.min(0.05, largest) * 0.999999);
        expect(areaShare(crop)).toBeLessThan(largest * 1.000001);
      }
    },
  );
  test('the cut is inside the photo, has the sheet’s shape, and is neither too small nor too large', () => {
    fc.assert(anything, { seed: 7, numRuns: 400 });
  });
});

/** A cut well away from every limit: half the largest, in the middle. */
const freeCrop = (photo: PixelSize, sheet: Sheet, turn: number): Crop =>
  scaledCrop(photo, centredCrop(photo, sheet, turn), 0.5);
const likeA4 = { format: 'a4', widthMm: 297, heightMm: 210 } as const;
const turns = fc.tuple(fc.integer({ min: 0, max: 3 }), fc.double({ min: 0, max: 10, noNaN: true }));

function expectSame(one: Crop, other: Crop): void {
  expect(one.centre[0]).toBeCloseTo(other.centre[0], 9);
  expect(one.centre[1]).toBeCloseTo(other.centre[1], 9);
  expect(one.size[0]).toBeCloseTo(other.size[0], 9);
  expect(one.size[1]).toBeCloseTo(other.size[1], 9);
  expect(one.turn).toBeCloseTo(other.turn, 9);
}

describe('away from the limits every move can be taken back', () => {
  const photo = { width: 4000, height: 3000 };
  test('moving and sizing', () => {
    fc.assert(
      fc.property(turns, shift, shift, ([quarters, rest], right, down) => {
        const start = freeCrop(photo, likeA4, quarters * 90 + rest);
        const away = movedCrop(photo, start, right * 100, down * 100);
        expectSame(movedCrop(photo, away, -right * 100, -down * 100), start);
        const factor = 1 + right / 10;
        expectSame(resizedCrop(photo, resizedCrop(photo, start, factor), 1 / factor), start);
      }),
      { seed: 7 },
    );
  });
  test('straightening, turning by quarters, another sheet', () => {
    const start = freeCrop(photo, likeA4, 90);
    const tilted = straightenedCrop(photo, start, 9.5);
    expect(tilted.turn).toBeCloseTo(99.5, 9);
    expectSame(straightenedCrop(photo, tilted, 0), start);
    expectSame(turnedCrop(photo, turnedCrop(photo, tilted, 1), 3), tilted);
    const upright = { ...likeA4, widthMm: 210, heightMm: 297 };
    expectSame(fittedToSheet(photo, fittedToSheet(photo, start, upright), likeA4), start);
  });
});

test('the cut follows the finger as the picture is seen, turned', () => {
  const photo = { width: 1000, height: 1000 };
  // Turned a quarter clockwise, the photo's left side is at the top: right on screen is up in the photo.
  const moved = movedCrop(photo, freeCrop(photo, likeA4, 90), 100, 0);
  expect(moved.centre[0]).toBeCloseTo(0.5, 9);
  expect(moved.centre[1]).toBeCloseTo(0.4, 9);
});

test('a cut that filled the photo fills it again after straightening and another sheet', () => {
  const photo = { width: 4000, height: 3000 };
  const straightened = straightenedCrop(photo, centredCrop(photo, likeA4), -6);
  expect(straightened.turn).toBeCloseTo(354, 9);
  expect(scaleOf(photo, straightened)).toBeCloseTo(1, 9);
  const square = { format: 'own', widthMm: 300, heightMm: 300 } as const;
  expect(scaleOf(photo, fittedToSheet(photo, straightened, square))).toBeCloseTo(1, 9);
});

test('another sheet keeps the centre where the photo allows it', () => {
  const photo = { width: 4000, height: 3000 };
  const small = scaledCrop(photo, centredCrop(photo, likeA4), 0.4);
  const aside = movedCrop(photo, small, 300, -200);
  const other = fittedToSheet(photo, aside, { format: 'own', widthMm: 200, heightMm: 300 });
  expect(other.centre).toEqual(aside.centre);
  const corner = movedCrop(photo, small, 9999, 9999);
  const tall = fittedToSheet(photo, corner, { format: 'own', widthMm: 200, heightMm: 300 });
  expect(tall.centre[1]).toBeLessThan(corner.centre[1]);
});

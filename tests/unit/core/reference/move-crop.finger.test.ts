import { expect, test } from 'vitest';
import { movedCrop, scaledCrop } from '../../../../app/core/reference/move-crop.ts';
import { centredCrop } from '../../../../app/core/reference/reference.ts';

const photo = { width: 1000, height: 1000 };
const sheet = { format: 'a4', widthMm: 297, heightMm: 210 } as const;

// The cut turned by t: right on screen is (cos t, -sin t) in the photo, down is (sin t, cos t). 100 px each;
// cos 30 degrees is 0.8660, sin 30 degrees 0.5.
test.each([
  [0, 100, 0, 0.6, 0.5],
  [0, 0, 100, 0.5, 0.6],
  [90, 0, 100, 0.6, 0.5],
  [180, 100, 0, 0.4, 0.5],
  [180, 0, 100, 0.5, 0.4],
  [270, 100, 0, 0.5, 0.6],
  [270, 0, 100, 0.4, 0.5],
  [30, 100, 0, 0.5866, 0.45],
  [30, 0, 100, 0.55, 0.5866],
])('turned by %i degrees, %i px right and %i px down lead to %f, %f', (turn, right, down, x, y) => {
  const small = scaledCrop(photo, centredCrop(photo, sheet, turn), 0.4);
  const { centre } = movedCrop(photo, small, right, down);
  expect(centre[0]).toBeCloseTo(x, 4);
  expect(centre[1]).toBeCloseTo(y, 4);
});

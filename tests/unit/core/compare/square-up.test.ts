import { expect, test } from 'vitest';
import {
  type Corners,
  cornersOf,
  homographyOf,
  project,
} from '../../../../app/core/compare/homography.ts';
import { squareUp } from '../../../../app/core/compare/square-up.ts';
import { emptyRaster } from '../../../../app/core/raster/linear-raster.ts';

/** A photo whose light is told by its place alone. */
function photoOf(width: number, height: number, light: (x: number, y: number) => number) {
  const photo = emptyRaster(width, height);
  for (let y = 0, i = 0; y < height; y++)
    for (let x = 0; x < width; x++, i++)
      photo.red[i] = photo.green[i] = photo.blue[i] = light(x + 0.5, y + 0.5);
  return photo;
}

const seen: Corners = [
  [60, 40],
  [350, 55],
  [330, 270],
  [45, 250],
];

// (own): light that changes evenly is read exactly between pixels, whatever the perspective.
test('light is found again at its place', () => {
  const photo = photoOf(400, 300, (x, y) => 0.1 + x / 800 + y / 1200);
  const size = { width: 90, height: 60 };
  const toPhoto = homographyOf(cornersOf(90, 60), seen) as Float64Array;
  const squared = squareUp(photo, toPhoto, size);
  for (const [x, y] of [
    [0, 0],
    [45, 30],
    [89, 0],
    [12, 59],
  ] as const) {
    const [u, v] = project(toPhoto, x + 0.5, y + 0.5);
    expect(squared.red[y * 90 + x]).toBeCloseTo(0.1 + u / 800 + v / 1200, 2);
  }
});

// (own): a fine chequer made smaller is grey, not a coarser chequer.
test('what is finer than a pixel is averaged', () => {
  const photo = photoOf(400, 300, (x, y) => (Math.floor(x) + Math.floor(y)) % 2);
  const squared = squareUp(photo, homographyOf(cornersOf(90, 60), seen) as Float64Array, {
    width: 90,
    height: 60,
  });
  let [least, most] = [1, 0];
  for (const light of squared.red) [least, most] = [Math.min(least, light), Math.max(most, light)];
  expect(most - least).toBeLessThan(0.35);
});

test('places off the photo are missing', () => {
  const photo = photoOf(40, 30, () => 0.5);
  const toPhoto = homographyOf(cornersOf(20, 10), [
    [-10, 5],
    [30, 5],
    [30, 25],
    [-10, 25],
  ]) as Float64Array;
  const squared = squareUp(photo, toPhoto, { width: 20, height: 10 });
  expect(squared.green[0]).toBeNaN();
  expect(squared.green[19]).toBeCloseTo(0.5, 6);
});

import { expect, test } from 'vitest';
import { alignmentTarget } from '../../../../app/core/compare/align.ts';
import { project } from '../../../../app/core/compare/homography.ts';
import { lightPyramid } from '../../../../app/core/compare/light-pyramid.ts';
import { localShifts } from '../../../../app/core/compare/local-shifts.ts';
import { emptyRaster } from '../../../../app/core/raster/linear-raster.ts';

// A sheet of 12 parts of the tests' own, 100 by 70 px, each with one blot in its middle; blots are moved one by one,
// by whole px, so that what is to be found is known. Limits are (own).
const [width, height] = [100, 70];
type Place = readonly [x: number, y: number];

/** Middles of the parts: four across and three down, of what lies 5 px within the sheet. */
const middles: readonly Place[] = Array.from({ length: 12 }, (_, n) => [
  5 + ((n % 4) + 0.5) * 22.5,
  5 + (Math.floor(n / 4) + 0.5) * 20,
]);

/** Dark blots on a pale ground, so many px round a sheet. */
function blotted(places: readonly Place[], round: number) {
  const raster = emptyRaster(width + 2 * round, height + 2 * round);
  for (let i = 0; i < raster.red.length; i++) {
    const [x, y] = [(i % raster.width) + 0.5 - round, Math.floor(i / raster.width) + 0.5 - round];
    const dark = places.reduce(
      (sum, [u, v]) => sum + Math.exp(-((x - u) ** 2 + (y - v) ** 2) / 14),
      0,
    );
    raster.red[i] = raster.green[i] = raster.blue[i] = (0.85 - 0.45 * dark) ** 3;
  }
  return raster;
}

const toPhoto = Float64Array.of(1, 0, 20, 0, 1, 20, 0, 0, 1);
const target = alignmentTarget(blotted(middles, 0), 0.1);
const shifted = (by: (at: Place, n: number) => Place) => {
  const moved = middles.map((at, n): Place => {
    const [dx, dy] = by(at, n);
    return [at[0] + dx, at[1] + dy];
  });
  return localShifts(lightPyramid(blotted(moved, 20)), toPhoto, target);
};

test.each<[number, number, number]>([
  [1, 0, 0],
  [0, 1, 0],
  [2, 0, 1],
  [0, -3, 1],
  [5, 0, 1],
  [-5, 0, 1],
  [0, 5, 1],
  [0, -5, 1],
])(
  'all parts moved by %i, %i px: they are mended by that, and astray from 2 px on',
  (dx, dy, share) => {
    const { astray, mended } = shifted(() => [dx, dy]);
    expect(astray).toBe(share);
    for (const [x, y] of [
      [0, 0],
      [width, height],
    ] as const) {
      const [u, v] = project(mended ?? new Float64Array(9), x, y);
      expect(u).toBeCloseTo(x + 20 + dx, 1);
      expect(v).toBeCloseTo(y + 20 + dy, 1);
    }
  },
);

test('some parts moved: the share of them is astray', () => {
  expect(shifted((_, n) => (n % 4 === 1 ? [3, 0] : [0, 0])).astray).toBe(3 / 12);
  expect(shifted((_, n) => (n >= 6 ? [0, -2] : [0, 0])).astray).toBe(6 / 12);
});

test.each<[string, (at: Place) => Place, readonly [number, number, number, number]]>([
  ['stretched across', ([x]) => [Math.round(0.06 * (x - 50)), 0], [0.06, 0, 0, 0]],
  ['stretched down', ([, y]) => [0, Math.round(0.1 * (y - 35))], [0, 0, 0, 0.1]],
  [
    'turned',
    ([x, y]) => [Math.round(-0.1 * (y - 35)), Math.round(0.1 * (x - 50))],
    [0, -0.1, 0.1, 0],
  ],
])('%s about its middle it is mended so', (_, by, [xx, xy, yx, yy]) => {
  const { mended } = shifted((at) => by(at));
  for (const [x, y] of [
    [50, 35],
    [0, 0],
    [width, 0],
    [0, height],
  ] as const) {
    const [u, v] = project(mended ?? new Float64Array(9), x, y);
    // Shifts are whole px, and a change of slope is held back a little.
    expect(Math.abs(u - (x + 20 + xx * (x - 50) + xy * (y - 35)))).toBeLessThan(0.7);
    expect(Math.abs(v - (y + 20 + yx * (x - 50) + yy * (y - 35)))).toBeLessThan(0.7);
  }
  const [u, v] = project(mended ?? new Float64Array(9), 50, 35);
  expect(Math.hypot(u - 70, v - 55)).toBeLessThan(0.1);
});

test('parts with less than a quarter of the structure of the whole say nothing; three are too few to mend by', () => {
  const told = (count: number) => {
    const places = middles.slice(0, count);
    const some = alignmentTarget(blotted(places, 0), 0.1);
    const moved = places.map(([x, y]): Place => [x + 3, y]);
    return localShifts(lightPyramid(blotted(moved, 20)), toPhoto, some);
  };
  expect(told(3)).toEqual({ astray: 1, mended: null });
  expect(told(4).mended).not.toBeNull();
});

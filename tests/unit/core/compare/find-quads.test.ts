import { describe, expect, test } from 'vitest';
import type { Point } from '../../../../app/core/colour/lab.ts';
import { findQuads, type Quad } from '../../../../app/core/compare/find-quads.ts';
import { emptyRaster } from '../../../../app/core/raster/linear-raster.ts';
import { seeded } from '../../../support/reading/seeded.ts';

type Four = readonly [Point, Point, Point, Point];
type Light = readonly [number, number, number];

/** Whether a place lies within corners that go round clockwise. */
const within = (corners: readonly Point[], x: number, y: number): boolean =>
  corners.every(([ax, ay], n) => {
    const [bx, by] = corners[(n + 1) % corners.length] as Point;
    return (bx - ax) * (y - ay) - (by - ay) * (x - ax) >= 0;
  });

/** Sheets on a board, later ones over earlier ones, every px the mean of nine places in it, and the grain of a camera. */
function photoOf(
  [width, height]: readonly [number, number],
  sheets: readonly (readonly [readonly Point[], Light])[],
  board: Light = [0.1, 0.1, 0.1],
) {
  const raster = emptyRaster(width, height);
  const parts = [1 / 6, 1 / 2, 5 / 6];
  const random = seeded(7);
  for (let i = 0; i < width * height; i++) {
    const [x, y] = [i % width, Math.floor(i / width)];
    const sum = [0, 0, 0];
    for (const u of parts)
      for (const v of parts) {
        const light = sheets.findLast(([corners]) => within(corners, x + u, y + v))?.[1] ?? board;
        for (const c of [0, 1, 2] as const) sum[c] = (sum[c] ?? 0) + light[c] / 9;
      }
    for (const [c, plane] of [raster.red, raster.green, raster.blue].entries())
      plane[i] = (sum[c] ?? 0) * (1 + 0.03 * (random() - 0.5));
  }
  return raster;
}

const white: Light = [0.8, 0.8, 0.8];
const size = [160, 120] as const;
/** How far a found corner is from the true one at most, px; lines lie on middles of pixels. */
const off = (found: readonly Point[] | undefined, wanted: Four): number =>
  Math.max(
    ...wanted.map(([x, y], n) => {
      const [u, v] = found?.[n] ?? [-99, -99];
      return Math.hypot(u + 0.5 - x, v + 0.5 - y);
    }),
  );

/** That of the found ones which lies nearest: places are only proposed. */
const nearest = (found: readonly Quad[], wanted: Four): number =>
  Math.min(...found.map(({ corners }) => off(corners, wanted)));

const turned = (degrees: number, wide: number, high: number, cx = 80, cy = 60): Four => {
  const [sin, cos] = [Math.sin((degrees * Math.PI) / 180), Math.cos((degrees * Math.PI) / 180)];
  const corner = (x: number, y: number): Point => [cx + x * cos - y * sin, cy + x * sin + y * cos];
  const [w, h] = [wide / 2, high / 2];
  return [corner(-w, -h), corner(w, -h), corner(w, h), corner(-w, h)];
};

// Limits are (own): 2.5 px of 160, as near as lines a degree and a px apart can lie.
describe('a sheet on a board', () => {
  test.each<readonly [string, Four]>([
    ['lying straight', turned(0, 100, 70)],
    ['turned a little to the right', turned(8, 100, 70)],
    ['turned to the left', turned(-17, 90, 60)],
    ['upright', turned(3, 60, 96)],
    [
      'seen aslant',
      [
        [40, 22],
        [122, 30],
        [142, 104],
        [18, 96],
      ],
    ],
    ['to the left and above', turned(5, 66, 50, 46, 40)],
    ['to the right and below', turned(-5, 66, 50, 112, 82)],
  ])('%s: its corners, clockwise from the upper left one', (_, corners) => {
    const found = findQuads(photoOf(size, [[corners, white]]), 4);
    expect(nearest(found, corners)).toBeLessThan(2.5);
    const [best] = found;
    expect(off(best?.corners, corners)).toBeLessThan(4);
    const area = Math.min(1, areaShare(corners) / 0.5);
    expect(best?.shown).toBeGreaterThan(0.9 * (0.8 + 0.2 * area));
    expect(best?.shown).toBeLessThanOrEqual(0.8 + 0.2 * area + 0.02);
  });

  test('darker than its board, or only of another colour: found alike', () => {
    const corners = turned(6, 100, 70);
    for (const [sheet, board] of [
      [[0.05, 0.05, 0.05], white],
      [
        [0.4, 0.05, 0.1],
        [0.1, 0.05, 0.4],
      ], // red on blue, as light
    ] as const)
      expect(nearest(findQuads(photoOf(size, [[corners, sheet]], board), 4), corners)).toBeLessThan(
        2.5,
      );
  });

  test('and a painting within its border are two; so many as are asked for', () => {
    const [outer, inner] = [turned(4, 120, 90), turned(4, 84, 56)];
    const photo = photoOf(size, [
      [outer, white],
      [inner, [0.2, 0.25, 0.3]],
    ]);
    const found = findQuads(photo, 40);
    for (const corners of [outer, inner]) expect(nearest(found, corners)).toBeLessThan(2.5);
    expect(findQuads(photo, 1)).toEqual(found.slice(0, 1));
    const shown = found.map((quad) => quad.shown);
    expect(shown).toEqual(shown.toSorted((one, two) => two - one));
    // None twice: their corners are further apart than a fortieth of the long side.
    for (const [n, one] of found.entries())
      for (const two of found.slice(0, n))
        expect(
          Math.max(
            ...one.corners.map(([x, y], k) =>
              Math.hypot(x - (two.corners[k]?.[0] ?? 0), y - (two.corners[k]?.[1] ?? 0)),
            ),
          ),
        ).toBeGreaterThan(4);
  });

  test('under 8 % of the photo is too small; over it is not', () => {
    expect(findQuads(photoOf(size, [[turned(5, 40, 34), white]]), 4)).toEqual([]); // 7.1 %
    const small = turned(5, 48, 36); // 9 %
    expect(nearest(findQuads(photoOf(size, [[small, white]]), 4), small)).toBeLessThan(2.5);
  });
});

test('no sheet: a plain board, and a three-cornered piece', () => {
  expect(findQuads(photoOf(size, []), 4)).toEqual([]);
  const piece: Point[] = [
    [80, 15],
    [140, 105],
    [20, 105],
  ];
  expect(findQuads(photoOf(size, [[piece, white]]), 4)).toEqual([]);
});

function areaShare(corners: Four): number {
  let sum = 0;
  for (let n = 0; n < 4; n++) {
    const [[x, y], [u, v]] = [corners[n], corners[(n + 1) % 4]] as [Point, Point];
    sum += x * v - u * y;
  }
  return Math.abs(sum) / 2 / (size[0] * size[1]);
}

test.each([8, 40])('a photo in a mirror shows as much of an outline at %i°', (degrees) => {
  const photo = photoOf(size, [[turned(degrees, 90, 60), white]]);
  const [width] = size;
  const mirrored = (plane: Float32Array) =>
    plane.map((_, i) => plane[i - (i % width) + width - 1 - (i % width)] as number);
  const mirror = {
    ...photo,
    red: mirrored(photo.red),
    green: mirrored(photo.green),
    blue: mirrored(photo.blue),
  };
  const [one, other] = [photo, mirror].map((each) => findQuads(each, 4)[0]?.shown ?? Number.NaN);
  // Lines are sought in whole degrees and px, which fall otherwise in a mirror.
  expect(Math.abs((one as number) - (other as number))).toBeLessThan(0.003);
});

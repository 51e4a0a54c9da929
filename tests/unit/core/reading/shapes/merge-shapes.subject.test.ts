import { expect, test } from 'vitest';
import { rgbOfLab } from '../../../../../app/core/colour/lab.ts';
import { painted, readFor } from '../../../../support/reading/rasters.ts';

const [width, height] = [800, 600];

test.each([
  [
    'of 2.5 mm is kept in the subject and beside it, and joins the ground 80 mm away',
    10,
    [true, true, false],
  ],
  ['of 2 mm, its corners rounded, is kept in the subject only', 8, [true, false, false]],
  ['of 5 mm is kept everywhere', 20, [true, true, true]],
] as [string, number, boolean[]][])('a dark square %s', async (_, side, kept) => {
  const places = [
    [375, 290],
    [545, 300],
    [60, 60],
  ] as const;
  const picture = painted(width, height, (x, y) => {
    const isJug = Math.hypot(x - 400, y - 300) < 100;
    const isDark = places.some(
      ([left, top]) => x >= left && x < left + side && y >= top && y < top + side,
    );
    const value = x > 700 && y > 500 ? 12 : isDark ? 32 : isJug ? 88 : 72;
    return rgbOfLab([value, isJug ? 20 : -5, isJug ? 30 : -5]);
  });
  const path = Array.from({ length: 40 }, (_, i) => {
    const angle = (i / 40) * 2 * Math.PI;
    return [0.5 + (115 * Math.cos(angle)) / width, 0.5 + (115 * Math.sin(angle)) / height] as const;
  });
  const { slotMap, reading } = await readFor(
    picture,
    { subject: [{ mode: 'circle', brush: 0, path }], limits: [22, 58] },
    { widthMm: 200, heightMm: 150 },
  );
  const bandAt = (x: number, y: number) => reading.slots[slotMap[y * width + x] as number]?.band;
  const half = Math.floor(side / 2);
  expect(places.map(([x, y]) => bandAt(x + half, y + half) !== bandAt(x + half, y - 24))).toEqual(
    kept,
  );
});

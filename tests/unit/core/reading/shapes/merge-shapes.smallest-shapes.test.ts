import { expect, test } from 'vitest';
import { runToEnd } from '../../../../../app/core/numeric/run-to-end.ts';
import { labelRuns } from '../../../../../app/core/raster/label-shapes.ts';
import { massSizes } from '../../../../../app/core/reading/masses.ts';
import { opened, painted, photographs, readFor } from '../../../../support/reading/rasters.ts';
import { sound } from '../../../../support/reading/sound-reading.ts';

/** 2 px a mm: squares of 3, 6 and 8 mm, darker than the ground; one of 3 mm is the darkest. */
const squares = painted(300, 220, (column, row) => {
  const [x, y] = [column / 2, row / 2];
  const inside = (left: number, top: number, side: number): boolean =>
    x >= left && x < left + side && y >= top && y < top + side;
  if (inside(10, 10, 3) || inside(30, 10, 6) || inside(60, 10, 8)) return [140, 140, 140];
  if (inside(10, 60, 40) || inside(100, 20, 3)) return [40, 40, 40];
  return x > 110 && y > 60 ? [140, 140, 140] : [220, 220, 220];
});
const sheet = { widthMm: 150, heightMm: 110 };
const read = (darks: number) =>
  readFor(squares, { bands: 3, smallest: { firstWash: 10, second: 10, darks } }, sheet);

// Limits and figures are (own): the docstrings of what is tested say why.
test('what is under her smallest size joins its neighbour; accents of the darkest are kept', async () => {
  /** Which of the three squares, and the dark one of 3 mm, are still there. */
  const left = async (darks: number): Promise<readonly boolean[]> => {
    const found = await read(darks);
    sound(found);
    const at = (x: number, y: number) => found.slotMap[Math.round(2 * y) * 300 + Math.round(2 * x)];
    return [at(11.5, 11.5), at(33, 13), at(64, 14), at(101.5, 21.5)].map((of) => of !== at(5, 5));
  };
  expect(await left(2)).toEqual([true, true, true, true]);
  expect(await left(5)).toEqual([false, true, true, true]);
  expect(await left(7)).toEqual([false, false, true, true]);
  expect(await left(10)).toEqual([false, false, false, true]);
});

test('the usual sizes wished for are the usual reading; larger ones make fewer shapes', async () => {
  const photo = await opened(photographs[1], 140);
  const usual = await readFor(photo);
  expect(await readFor(photo, { smallest: massSizes })).toEqual(usual);
  const broad = await readFor(photo, { smallest: { firstWash: 30, second: 15, darks: 2 } });
  expect(broad.slotMap).toEqual(usual.slotMap); // only what is counted changes
  expect(broad.reading.masses?.firstWash).toBeLessThan(usual.reading.masses?.firstWash ?? 0);
  expect(broad.reading.masses?.second).toBeLessThan(usual.reading.masses?.second ?? 0);
  expect(broad.reading.masses?.darks).toBe(usual.reading.masses?.darks);
  const finest = await readFor(photo, { smallest: { firstWash: 30, second: 15, darks: 12 } });
  sound(finest);
  const count = async ({ slotMap, reading }: typeof usual): Promise<number> =>
    runToEnd(labelRuns(slotMap, reading.raster)).kinds.length;
  expect(await count(finest)).toBeLessThan(await count(usual));
});

test.each([[40], [1]])(
  '%i mm for the darks on a sheet no larger: still a sound reading',
  async (mm) => {
    const wishes = { smallest: { firstWash: 40, second: 40, darks: mm } };
    sound(await readFor(squares, wishes, { widthMm: 40, heightMm: 29 }));
  },
);

test('a size that is no size is told so', async () => {
  const smallest = { firstWash: Number.NaN, second: 5, darks: 2 };
  await expect(readFor(squares, { smallest })).rejects.toThrow('1 to 40 mm');
  const part: [number, number] = [Number.NaN, 0];
  await expect(readFor(squares, { familyEdits: [{ part }] })).rejects.toThrow('colour');
});

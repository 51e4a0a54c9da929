import { expect, test } from 'vitest';
import { offBoard } from '../../../../app/core/compare/off-board.ts';
import { emptyRaster } from '../../../../app/core/raster/linear-raster.ts';
import { seeded } from '../../../support/reading/seeded.ts';

const [width, height] = [120, 90];
type Light = readonly [number, number, number];

/** Where a photo made pixel by pixel is told as off the board. */
function toldOff(lightAt: (x: number, y: number) => Light) {
  const raster = emptyRaster(width, height);
  for (let i = 0; i < width * height; i++) {
    const [red, green, blue] = lightAt(i % width, Math.floor(i / width));
    raster.red[i] = red;
    raster.green[i] = green;
    raster.blue[i] = blue;
  }
  const off = offBoard(raster);
  return (x: number, y: number): number => off[y * width + x] ?? Number.NaN;
}

const inside = (x: number, y: number, [l, t, r, b]: readonly number[]): boolean =>
  x >= (l ?? 0) && y >= (t ?? 0) && x < (r ?? 0) && y < (b ?? 0);
const sheet = [30, 20, 90, 70] as const;
const board: Light = [0.25, 0.2, 0.15];

/** Told as off the board exactly in a rectangle, but for the two px a soft border takes. */
function expectAlone(
  told: (x: number, y: number) => number,
  [l, t, r, b]: readonly number[],
): void {
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const deep = inside(x, y, [(l ?? 0) + 1, (t ?? 0) + 1, (r ?? 0) - 1, (b ?? 0) - 1]);
      const far = !inside(x, y, [(l ?? 0) - 4, (t ?? 0) - 4, (r ?? 0) + 4, (b ?? 0) + 4]);
      if (deep) expect(told(x, y), `${x}, ${y}`).toBe(1);
      if (far) expect(told(x, y), `${x}, ${y}`).toBe(0);
    }
}

test('the sheet is what differs from the rim of the photo', () => {
  expectAlone(
    toldOff((x, y) => (inside(x, y, sheet) ? [0.7, 0.7, 0.7] : board)),
    sheet,
  );
  // By one channel alone, and darker.
  expectAlone(
    toldOff((x, y) => (inside(x, y, sheet) ? [0.25, 0.2, 0.05] : board)),
    sheet,
  );
});

test('a board in light that falls off, and with grain, is board all over', () => {
  const random = seeded(3);
  const light = (x: number, y: number): Light => {
    const fall = 1 - 0.5 * (x / width) - 0.2 * (y / height) + 0.06 * (random() - 0.5);
    return [board[0] * fall, board[1] * fall, board[2] * fall];
  };
  expectAlone(
    toldOff((x, y) => (inside(x, y, sheet) ? [0.8, 0.75, 0.7] : light(x, y))),
    sheet,
  );
});

test('a smaller thing beside it is left out, wherever it comes first; its own hole stays a hole', () => {
  const hole = [50, 35, 70, 55];
  for (const brush of [
    [8, 8, 20, 16],
    [100, 76, 112, 84],
  ]) {
    const told = toldOff((x, y) =>
      inside(x, y, brush) || (inside(x, y, sheet) && !inside(x, y, hole)) ? [0.8, 0.8, 0.8] : board,
    );
    expect(told((brush[0] as number) + 5, (brush[1] as number) + 4)).toBe(0);
    expect(told(35, 30)).toBe(1);
    expect(told(60, 45)).toBe(0);
  }
});

test('something that lies over a part of the rim does not make the rest of the board another one', () => {
  const cloth = [0, 30, 9, 60];
  const told = toldOff((x, y) =>
    inside(x, y, cloth) ? [0.9, 0.1, 0.1] : inside(x, y, sheet) ? [0.7, 0.7, 0.7] : board,
  );
  expect(told(60, 45)).toBe(1);
  expect([told(110, 5), told(60, 85), told(4, 45)]).toEqual([0, 0, 0]);
});

test('a board and nothing on it: nothing', () => {
  const told = toldOff(() => board);
  expect([told(60, 45), told(0, 0), told(119, 89)]).toEqual([0, 0, 0]);
});

import { expect, test } from 'vitest';
import type { Point } from '../../../../app/core/colour/lab.ts';
import { SmallPicture } from '../../../../app/ui/picture/small-picture.tsx';
import { NotedContext } from '../../../support/drawing/noted-context.ts';
import { drawBare } from '../../../support/ui/bare-page.ts';

// The part shown is 1.4 times as large as what is meant, and no less than 0.08 of the long side (own); 128 px wide.
function drawnPart(width: number, height: number, lines: readonly (readonly Point[])[]) {
  const noted = new NotedContext({ width: 128, height: 128 });
  const bitmap = { width, height } as ImageBitmap;
  drawBare(<SmallPicture bitmap={bitmap} lines={lines} />, () => noted).leave();
  return noted.drawn;
}
const near = (numbers: readonly number[]) => numbers.map((n) => expect.closeTo(n, 6));

test('what is meant is shown with some of what lies round it, and its lines twice, white under black', () => {
  const lines: Point[][] = [
    [
      [0.4, 0.5],
      [0.6, 0.5],
    ],
    [
      [0.5, 0.45],
      [0.5, 0.55],
    ],
  ];
  const [image, ...strokes] = drawnPart(1000, 800, lines);
  const cut = 1.4 * 200; // of 200 x 80 px
  expect(image?.with).toEqual(near([500 - cut / 2, 400 - cut / 2, cut, cut, 0, 0, 128, 128]));
  const scale = 128 / cut;
  const pathOf = (line: Point[]): number[] =>
    line.flatMap(([x, y]) => [
      (1000 * x - 500 + cut / 2) * scale,
      (800 * y - 400 + cut / 2) * scale,
    ]);
  expect(
    strokes.map(({ strokeStyle, lineWidth, lines: [begun] }) => [strokeStyle, lineWidth, begun]),
  ).toEqual([
    ['white', 7, 0],
    ['white', 7, 0],
    ['black', 3, 0],
    ['black', 3, 0],
  ]);
  for (const [i, stroke] of strokes.entries()) {
    expect(stroke.with).toEqual(near(pathOf(lines[i % 2] as Point[])));
    expect(stroke.set).toMatch(/^round round/);
  }
});

test('a spot is shown with as much as is seen, at the rim of the picture no more than is there', () => {
  const [spot] = drawnPart(1000, 800, [[[0.5, 0.5]]]);
  expect(spot?.with).toEqual(near([460, 360, 80, 80, 0, 0, 128, 128]));
  const [corner] = drawnPart(1000, 800, [[[0, 1]]]);
  expect(corner?.with).toEqual(near([0, 720, 80, 80, 0, 0, 128, 128]));
  const [right] = drawnPart(1000, 800, [[[1, 0]]]);
  expect(right?.with).toEqual(near([920, 0, 80, 80, 0, 0, 128, 128]));
});

test('of what is as large as the picture a square is shown that lies in it', () => {
  const [all] = drawnPart(1000, 600, [
    [
      [0, 0],
      [1, 1],
    ],
  ]);
  expect(all?.with).toEqual(near([200, 0, 600, 600, 0, 0, 128, 128]));
});

test('of a picture handed back, or of nothing, nothing is shown', () => {
  expect(drawnPart(0, 0, [[[0.5, 0.5]]])).toEqual([]);
  expect(drawnPart(100, 100, [])).toEqual([]);
});

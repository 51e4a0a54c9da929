import { expect, test } from 'vitest';
import type { OutlineLine } from '../../../app/core/outline/choose-strokes.ts';
import type { Outline } from '../../../app/core/outline/outline.ts';
import { drawingLayer } from '../../../app/drawing/line-layers.ts';

const [width, height] = [400, 200];

/** A sheet of 200 by 100 mm with one line from side to side, half way down. */
const drawing = (kind: OutlineLine['kind']): Outline => ({
  widthMm: 200,
  heightMm: 100,
  lines: [
    {
      kind,
      role: 'outer',
      points: [
        [0, 50],
        [200, 50],
      ],
    },
  ],
  grid: { sideMm: 20, across: 10, down: 5, lastRow: 1 },
});

/** Share of a row of white paper that the drawing darkens. */
function drawnShare(outline: Outline, row: number): number {
  const canvas = document.createElement('canvas');
  Object.assign(canvas, { width, height });
  const context = canvas.getContext('2d') as CanvasRenderingContext2D;
  drawingLayer((on) => {
    on.fillStyle = 'white';
    on.fillRect(0, 0, width, height);
  }, outline)(context);
  const { data } = context.getImageData(0, row, width, 1);
  return (
    Array.from({ length: width }, (_, x) => data[4 * x] as number).filter((c) => c < 200).length /
    width
  );
}

test('a drawing lies on the sheet at its place: full lines full, soft ones dotted, paper elsewhere', () => {
  expect(drawnShare(drawing('hard'), 100)).toBe(1);
  expect(drawnShare(drawing('hard'), 90)).toBe(0);
  const soft = drawnShare(drawing('soft'), 100);
  expect(soft).toBeGreaterThan(0.1);
  expect(soft).toBeLessThan(0.9);
});

test('what is drawn after it is drawn in pixels again', () => {
  const canvas = document.createElement('canvas');
  const context = canvas.getContext('2d') as CanvasRenderingContext2D;
  drawingLayer(() => {}, drawing('hard'))(context);
  expect(context.getTransform().isIdentity).toBe(true);
  expect(context.getLineDash()).toEqual([]);
});

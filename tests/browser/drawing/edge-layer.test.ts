import { expect, test } from 'vitest';
import type { Edge, EdgeKind, EdgeWish } from '../../../app/core/reading/edges/edge.ts';
import { edgeLayer } from '../../../app/drawing/line-layers.ts';

const size = 1600;

/** A straight edge from side to side, half way down. */
const across = (kind: EdgeKind, wish?: EdgeWish): Edge => ({
  ...(wish && { wish }),
  a: 0,
  b: 1,
  kind,
  graded: false,
  heldByColour: false,
  outOfFocus: false,
  contrast: 20,
  widthMm: 1,
  widthShare: 0.003,
  lengthMm: 100,
  path: [
    [0, 0.5],
    [1, 0.5],
  ],
});

/** Codes of the row under the edge, on a middle grey. */
function rowUnder(edges: readonly Edge[], row = size / 2): number[] {
  const canvas = document.createElement('canvas');
  canvas.width = size;
  canvas.height = size;
  const context = canvas.getContext('2d') as CanvasRenderingContext2D;
  edgeLayer((on) => {
    on.fillStyle = 'rgb(128 128 128)';
    on.fillRect(0, 0, size, size);
  }, edges)(context);
  const { data } = context.getImageData(0, row, size, 1);
  return Array.from({ length: size }, (_, x) => data[4 * x] as number);
}

const darkShare = (row: readonly number[]): number =>
  row.filter((code) => code < 90).length / row.length;

test('a hard edge is a full line, a soft one dots, a lost one mostly gaps', () => {
  const share = (kind: EdgeKind): number => darkShare(rowUnder([across(kind)]));
  expect(share('hard')).toBeGreaterThan(0.98);
  expect(share('soft')).toBeGreaterThan(0.1);
  expect(share('soft')).toBeLessThan(0.8);
  expect(share('lost')).toBeGreaterThan(0.02);
  expect(share('lost')).toBeLessThan(0.5);
});

test('away from the edges the picture is left as it was', () => {
  expect(new Set(rowUnder([across('hard')], 20))).toEqual(new Set([128]));
});

test('a decided edge is drawn as what it is to be, with a stroke across its middle', () => {
  const share = (edge: Edge): number => darkShare(rowUnder([edge]));
  expect(share(across('hard', 'soften'))).toBeCloseTo(share(across('soft')), 1);
  expect(share(across('hard', 'lose'))).toBeCloseTo(share(across('lost')), 1);
  expect(share(across('lost', 'sharpen'))).toBeGreaterThan(0.98);
  const beside = (edge: Edge): number[] =>
    rowUnder([edge], size / 2 - 8).flatMap((code, x) => (code < 90 ? [x] : []));
  expect(beside(across('hard'))).toEqual([]);
  const mark = beside(across('hard', 'keep'));
  expect(mark.length).toBeGreaterThan(2);
  for (const x of mark) expect(Math.abs(x - size / 2)).toBeLessThan(5);
});

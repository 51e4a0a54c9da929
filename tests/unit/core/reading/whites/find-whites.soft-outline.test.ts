import { expect, test } from 'vitest';
import type { Point } from '../../../../../app/core/colour/lab.ts';
import { runToEnd } from '../../../../../app/core/numeric/run-to-end.ts';
import type { Edge } from '../../../../../app/core/reading/edges/edge.ts';
import type { Slot } from '../../../../../app/core/reading/slot.ts';
import { findWhites } from '../../../../../app/core/reading/whites/find-whites.ts';

const side = 20;
const size = { width: side, height: side };
const slot = (reserve: boolean): Slot => ({
  passage: 'sheet',
  band: 1,
  family: 1,
  share: 0.5,
  lab: [90, 0, 0],
  target: [90, 0, 0],
  reserve,
  shapes: 1,
  smallShapes: 0,
  largestMm2: 1,
});

/** An edge between the white and what is painted, by px. */
const edge = (kind: Edge['kind'], ...pathPx: Point[]): Edge => ({
  a: 0,
  b: 1,
  kind,
  graded: false,
  heldByColour: false,
  outOfFocus: false,
  contrast: 20,
  widthMm: 1,
  widthShare: 0.01,
  lengthMm: 10,
  path: pathPx.map(([x, y]) => [x / side, y / side] as const),
});

/** Soft shares of the whites along these edges, with a px inside each. */
function softShares(isWhite: (x: number, y: number) => boolean, ...edges: Edge[]) {
  const slotMap = Uint8Array.from({ length: side * side }, (_, i) =>
    isWhite(i % side, Math.floor(i / side)) ? 0 : 1,
  );
  const shapes = { slotMap, slots: [slot(true), slot(false)], edges, borders: [] };
  return runToEnd(findWhites(shapes, size, 1)).map(({ at: [x, y], softShare }) => ({
    x: x * side,
    y: y * side,
    softShare,
  }));
}

const level = edge('soft', [4, 10], [16, 10]);
const upright = edge('soft', [10, 4], [10, 16]);

// Limits and figures are (own): the docstrings of what is tested say why.
test.each([
  ['above', level, (_: number, y: number, px: number) => y <= 9 - px, 2],
  ['below', level, (_: number, y: number, px: number) => y >= 10 + px, 3],
  ['left', upright, (x: number, _: number, px: number) => x <= 9 - px, 2],
  ['right', upright, (x: number, _: number, px: number) => x >= 10 + px, 3],
] as const)('a white %s of the line is found within 3 px', (_, soft, isBeside, most) => {
  for (let px = 0; px <= most; px++) {
    const [white] = softShares((x, y) => isBeside(x, y, px), soft);
    expect(white?.softShare).toBe(1);
  }
  const [far] = softShares((x, y) => isBeside(x, y, most + 1), soft);
  expect(far?.softShare).toBe(0);
});

test.each([
  [9.98, [1, 0]],
  [10.02, [0, 1]],
] as const)('of two whites the nearer one has the edge at %f px', (line, expected) => {
  const rows = softShares((_, y) => y < 8 || y >= 12, edge('soft', [4, line], [16, line]));
  const firstUpper = rows.sort((one, other) => one.y - other.y);
  expect(firstUpper.map(({ softShare }) => softShare)).toEqual(expected);
  const columns = softShares((x) => x < 8 || x >= 12, edge('soft', [line, 4], [line, 16]));
  const firstLeft = columns.sort((one, other) => one.x - other.x);
  expect(firstLeft.map(({ softShare }) => softShare)).toEqual(expected);
});

test.each([
  ['one point', [[3, 3]]],
  [
    'two points',
    [
      [3, 1],
      [3, 5],
    ],
  ],
  [
    'three points',
    [
      [17, 17],
      [3, 3],
      [17, 17],
    ],
  ],
  [
    'four points',
    [
      [17, 17],
      [3, 1],
      [3, 5],
      [17, 17],
    ],
  ],
] as const)('the middle of a line tells which white it runs along: %s', (_, path) => {
  const whites = softShares(
    (x, y) => (x < 6 && y < 6) || (x >= 14 && y >= 14),
    edge('lost', ...path),
  );
  const upperLeft = whites.find(({ x }) => x < 10);
  expect(whites).toHaveLength(2);
  expect(upperLeft?.softShare).toBe(1);
  expect(whites.find(({ x }) => x > 10)?.softShare).toBe(0);
});

test('edges of a kind other than soft and lost count for the whole length only', () => {
  const hard = edge('hard', [4, 10], [16, 10]);
  expect(softShares((_, y) => y >= 10, hard)[0]?.softShare).toBe(0);
  expect(softShares((_, y) => y >= 10, hard, level, hard, level)[0]?.softShare).toBe(0.5);
});

test('an edge between two whites or two painted slots tells nothing', () => {
  const within = { ...level, b: 0 };
  const outside = { ...level, a: 1 };
  expect(softShares((_, y) => y >= 10, within, outside)[0]?.softShare).toBe(0);
});

test('the nearer white has the edge, though the other one reaches farther from it', () => {
  const rows = softShares((_, y) => y <= 8 || y >= 12, level);
  expect(rows.find(({ y }) => y < 10)?.softShare).toBe(1);
  const columns = softShares((x) => x <= 8 || x >= 12, upright);
  expect(columns.find(({ x }) => x < 10)?.softShare).toBe(1);
});

import { expect, test } from 'vitest';
import { featurePieces } from '../../../../app/core/outline/feature-pieces.ts';
import type { Detail } from '../../../../app/core/reading/details/detail.ts';

// How near, how large and how many: the project's own figures (see feature-pieces.ts).
const raster = { width: 100, height: 50 };
const sheet = { widthMm: 200, heightMm: 100 };
/** Two cells of 2 px wide and one high, at cells 10 and 11 of row 5: 4 mm a cell. */
const eye: Detail = {
  isLight: false,
  lines: [5, 10, 12],
  at: [0.22, 0.22],
  areaMm2: 32,
  lab: [20, 0, 0],
  rows: [],
  shares: [],
  near: 1,
};
const of = (...shapes: Detail[]) =>
  featurePieces({ raster, sheet, details: { cellPx: 2, shapes } });

test('a small dark shape in the subject is drawn round its cells, in mm of the sheet', () => {
  const [piece, ...others] = of(eye);
  expect(others).toEqual([]);
  expect(piece).toMatchObject({ kind: 'found', role: 'inner', near: 1 });
  const [xs, ys] = [0, 1].map((axis) => piece?.points.map((point) => point[axis] ?? 0) ?? []);
  expect([Math.min(...(xs ?? [])), Math.max(...(xs ?? []))]).toEqual([40, 48]);
  expect([Math.min(...(ys ?? [])), Math.max(...(ys ?? []))]).toEqual([20, 24]);
  expect(piece?.points[0]).toEqual(piece?.points.at(-1));
});

test.each([
  ['a light one', { isLight: true }, 0],
  ['one further off', { near: 0.84 }, 0],
  ['one at the limit', { near: 0.85, areaMm2: 4 }, 1],
  ['one too small', { areaMm2: 3.9 }, 0],
])('%s', (_, changed, drawn) => expect(of({ ...eye, ...changed })).toHaveLength(drawn));

test('the first thirty of many, and none where no details were found', () => {
  expect(of(...Array.from({ length: 31 }, () => eye))).toHaveLength(30);
  expect(featurePieces({ raster, sheet })).toEqual([]);
});

test('a ring has a line within and one without', () => {
  const ring = [4, 10, 13, 5, 10, 11, 5, 12, 13, 6, 10, 13];
  expect(of({ ...eye, lines: ring })).toHaveLength(2);
});

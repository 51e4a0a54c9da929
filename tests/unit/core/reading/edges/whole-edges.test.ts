import { expect, test } from 'vitest';
import type { Point } from '../../../../../app/core/colour/lab.ts';
import {
  joinStretches,
  stretchesOf,
  wholeEdges,
} from '../../../../../app/core/reading/edges/whole-edges.ts';
import { madeEdge } from '../../../../support/reading/made-edge.ts';

const size = { width: 200, height: 100 };
const from = (start: Point, end: Point, otherwise = {}) => madeEdge([start, end], otherwise);
const wholes = (...edges: ReturnType<typeof madeEdge>[]) => [...wholeEdges(edges, size)];

// The limits are (own): the docstrings of what is tested say why.
test('what goes on straight is one edge, in whatever direction each stretch was traced', () => {
  const left = from([0.1, 0.5], [0.3, 0.5]);
  expect(wholes(left, from([0.3, 0.5], [0.6, 0.52]))).toEqual([0, 0]);
  expect(wholes(left, from([0.6, 0.52], [0.3, 0.5]))).toEqual([0, 0]);
  expect(wholes(left, from([0.3, 0.5], [0.5, 0.5]), from([0.5, 0.5], [0.7, 0.5]))).toEqual([
    0, 0, 0,
  ]);
});

test('a corner, a gap, another sharpness or other sides end it', () => {
  const left = from([0.1, 0.5], [0.3, 0.5]);
  expect(wholes(left, from([0.3, 0.5], [0.3, 0.9]))).toEqual([0, 1]);
  expect(wholes(left, from([0.31, 0.5], [0.6, 0.5]))).toEqual([0, 1]);
  expect(wholes(left, from([0.3, 0.5], [0.6, 0.5], { kind: 'soft' }))).toEqual([0, 1]);
  expect(wholes(left, from([0.3, 0.5], [0.6, 0.5], { kind: 'found' }))).toEqual([0, 0]);
  expect(wholes(left, from([0.3, 0.5], [0.6, 0.5], { a: 2, b: 3 }))).toEqual([0, 1]);
});

test('one side shared is enough, whichever of either it is', () => {
  const left = from([0.1, 0.5], [0.3, 0.5], { a: 1, b: 2 });
  for (const [a, b] of [
    [1, 3],
    [3, 1],
    [2, 3],
    [3, 2],
  ])
    expect(wholes(left, from([0.3, 0.5], [0.6, 0.5], { a, b }))).toEqual([0, 0]);
});

test('where three meet the two that lie straightest go on', () => {
  const found = wholes(
    from([0.1, 0.5], [0.3, 0.5]),
    from([0.3, 0.5], [0.45, 0.8], { b: 2 }),
    from([0.3, 0.5], [0.6, 0.5], { b: 3 }),
  );
  expect(found).toEqual([0, 1, 0]);
});

test('stretches without a course, and none at all', () => {
  expect(wholes()).toEqual([]);
  expect(wholes(madeEdge([]), madeEdge([[0.5, 0.5]]))).toEqual([0, 1]);
  expect(stretchesOf(Int32Array.of(0, 1, 0), 2)).toEqual([0, 2]);
});

test('a whole edge is as long as its stretches, and tells their mean by length', () => {
  const joined = joinStretches([
    from([0, 0.5], [0.1, 0.5], { lengthMm: 30, contrast: 10, widthMm: 1, kind: 'found' }),
    from([0.1, 0.5], [0.4, 0.5], { lengthMm: 90, contrast: 30, widthMm: 3, outOfFocus: true }),
  ]);
  expect(joined).toMatchObject({
    kind: 'hard',
    lengthMm: 120,
    contrast: 25,
    widthMm: 2.5,
    outOfFocus: true,
  });
});

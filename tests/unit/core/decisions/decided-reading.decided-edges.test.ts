import { expect, test } from 'vitest';
import type { Point } from '../../../../app/core/colour/lab.ts';
import { decidedEdges } from '../../../../app/core/decisions/decided-reading.ts';
import type { Decision } from '../../../../app/core/decisions/painting.ts';
import {
  type Edge,
  type EdgeWish,
  edgeShares,
  edgesOnSheet,
  edgeWishes,
  kindOnSheet,
} from '../../../../app/core/reading/edges/edge.ts';
import type { Reading } from '../../../../app/core/reading/reading.ts';
import { sheetOf } from '../../../../app/core/reference/sheet.ts';
import { keptReading } from '../../../support/reading/kept-reading.ts';
import { uprightEdge } from '../../../support/reading/made-edge.ts';

const cut = {
  crop: { centre: [0.5, 0.5], size: [1, 1], turn: 0 },
  sheet: sheetOf('quarter', 'across'),
} as const;

/** A hard, a soft and a lost edge along one border of 100 mm. */
const edges = [
  uprightEdge(0.2, { lengthMm: 40 }),
  uprightEdge(0.5, { kind: 'soft', lengthMm: 30, contrast: 7 }),
  uprightEdge(0.8, { kind: 'lost', lengthMm: 20, contrast: 2 }),
] as const;

const reading = (): Reading => ({
  ...keptReading,
  raster: { width: 200, height: 100 },
  sheet: { widthMm: 381, heightMm: 279 },
  borders: [{ a: 0, b: 1, lengthMm: 100, contrast: 20, soft: 0.3, lost: 0.2 }],
  edges,
});

const decide = (id: string, x: number, wish: EdgeWish | null): Decision => ({
  id,
  at: 0,
  kind: 'edge',
  place: [x, 0.5],
  wish,
});

const wishesOf = (found: Reading) => found.edges?.map(({ wish }) => wish ?? null);
const border = (found: Reading) => {
  const [{ soft, lost, lengthMm, contrast } = { soft: 0, lost: 0, lengthMm: 0, contrast: 0 }] =
    found.borders;
  return [soft, lost, lengthMm, contrast].map((n) => Number(n.toFixed(9)));
};

test('nothing decided: the very same reading', () => {
  const before = reading();
  expect(decidedEdges(before, [], cut)).toBe(before);
  const { edges: _none, ...old } = before;
  expect(decidedEdges(old, [decide('a', 0.2, 'lose')], cut)).toBe(old);
});

test.each<[x: number, wish: EdgeWish, soft: number, lost: number]>([
  [0.2, 'keep', 0.3, 0.2],
  [0.2, 'sharpen', 0.3, 0.2],
  [0.2, 'soften', 0.7, 0.2],
  [0.2, 'lose', 0.3, 0.6],
  [0.5, 'keep', 0.3, 0.2],
  [0.5, 'sharpen', 0, 0.2],
  [0.5, 'soften', 0.3, 0.2],
  [0.5, 'lose', 0, 0.5],
  [0.8, 'keep', 0.3, 0.2],
  [0.8, 'sharpen', 0.3, 0],
  [0.8, 'soften', 0.5, 0],
  [0.8, 'lose', 0.3, 0.2],
])('the edge at %f, %s: soft %f, lost %f of its border', (x, wish, soft, lost) => {
  const found = decidedEdges(reading(), [decide('a', x, wish)], cut);
  expect(border(found)).toEqual([soft, lost, 100, 20]);
});

test('the last decision on an edge counts; null and undo bring back what stood before', () => {
  const two = [decide('a', 0.2, 'lose'), decide('b', 0.21, 'soften')];
  expect(wishesOf(decidedEdges(reading(), two, cut))).toEqual(['soften', null, null]);
  const undo: Decision = { id: 'c', at: 0, kind: 'undo', undoes: 'b' };
  expect(wishesOf(decidedEdges(reading(), [...two, undo], cut))).toEqual(['lose', null, null]);
  const free = [...two, decide('d', 0.2, null)];
  expect(decidedEdges(reading(), free, cut)).toEqual(reading());
});

test('a decision that comes near no edge rests, and wakes where there is one again', () => {
  const resting = [decide('a', 0.35, 'lose')];
  expect(decidedEdges(reading(), resting, cut)).toEqual(reading());
  const moved = { ...reading(), edges: [uprightEdge(0.34)] };
  expect(wishesOf(decidedEdges(moved, resting, cut))).toEqual(['lose']);
});

test('a decision reaches an edge a fiftieth of the long side away, not one farther off', () => {
  const wishAt = (x: number) =>
    wishesOf(decidedEdges(reading(), [decide('a', x, 'lose')], cut))?.[0];
  expect([0.181, 0.219].map(wishAt)).toEqual(['lose', 'lose']);
  expect([0.179, 0.221].map(wishAt)).toEqual([null, null]);
});

test('a tighter cut, turned upside down: the same spot of the photo', () => {
  const half = { ...cut, crop: { centre: [0.5, 0.5], size: [0.5, 0.5], turn: 180 } } as const;
  // The photo's 0.35 is then 0.8 of the cut-out.
  const found = decidedEdges(reading(), [decide('a', 0.35, 'sharpen')], half);
  expect(wishesOf(found)).toEqual([null, null, 'sharpen']);
});

test('the warning of hard edges goes once enough are soft, and only then', () => {
  const warnings = [{ code: 'all-hard', text: 'Stiff.' }] as const;
  const stiff: Reading = {
    ...reading(),
    warnings,
    edges: [0.1, 0.3, 0.5, 0.7, 0.9].map((x) => uprightEdge(x, { lengthMm: 200 })),
  };
  expect(decidedEdges(stiff, [decide('a', 0.3, 'keep')], cut).warnings).toEqual(warnings);
  expect(decidedEdges(stiff, [decide('a', 0.3, 'soften')], cut).warnings).toEqual([]);
});

test('what each wish makes of each edge; shares follow', () => {
  const kinds = (edge: Edge) => edgeWishes.map((wish) => kindOnSheet({ ...edge, wish }));
  expect(kinds(edges[0])).toEqual(['hard', 'soft', 'lost', 'hard']);
  expect(kinds(edges[1])).toEqual(['soft', 'soft', 'lost', 'found']);
  const found = decidedEdges(reading(), [decide('a', 0.2, 'lose')], cut).edges ?? [];
  const shares = edgeShares(edgesOnSheet(found)).map(({ kind, lengthMm }) => [kind, lengthMm]);
  expect(shares).toEqual([
    ['hard', 0],
    ['soft', 30],
    ['found', 0],
    ['lost', 60],
  ]);
});

test('a place beyond the cut-out finds nothing', () => {
  const place: Point = [3, -2];
  const away: Decision = { id: 'a', at: 0, kind: 'edge', place, wish: 'lose' };
  expect(decidedEdges(reading(), [away], cut)).toEqual(reading());
});

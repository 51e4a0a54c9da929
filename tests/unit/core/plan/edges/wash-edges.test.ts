import { expect, test } from 'vitest';
import {
  bothSides,
  longestNamed,
  meetHere,
  sideOf,
  washEdges,
} from '../../../../../app/core/plan/edges/wash-edges.ts';
import { nameShape } from '../../../../../app/core/words/plan/names.ts';
import { type MadeWork, madeFacts } from '../../../../support/plan/made-work.ts';
import { uprightEdge } from '../../../../support/reading/made-edge.ts';

/** A white, two lights of two colours, two darks of them: own figures of this test. */
const made: MadeWork = {
  slots: [
    { lightness: 97, band: 1, family: 1, reserve: true },
    { lightness: 70, band: 2, family: 1 },
    { lightness: 65, band: 2, family: 2 },
    { lightness: 30, band: 3, family: 1 },
    { lightness: 35, band: 3, family: 2 },
  ],
  washes: { sheet: [[1, 2, 3, 4], [3, 4], [3]] },
};
const facts = madeFacts(made);
const slotsOf = (wash: number): readonly number[] =>
  facts.passages[0]?.washes[wash - 1]?.slots ?? [];

test('an edge is made by the last wash that paints both its sides; of one colour, by the last that paints either', () => {
  const lastFor = (a: number, b: number) => [1, 2, 3].map((n) => meetHere(facts, slotsOf(n), a, b));
  expect(lastFor(1, 2)).toEqual([true, true, true]);
  expect(lastFor(3, 4)).toEqual([false, true, true]); // two colours: both in the second
  expect(lastFor(1, 4)).toEqual([true, true, true]); // two colours: both in the first alone
  expect(lastFor(1, 3)).toEqual([false, false, true]); // one colour: its dark in the third
  expect(lastFor(2, 4)).toEqual([false, true, true]);
  expect(meetHere(facts, [1, 2], 3, 4)).toBe(true); // no wash of the plan
});

test('the edges a wash makes are those she decided, with the side painted in it as its own', () => {
  const edges = [
    uprightEdge(0.2, { a: 0, b: 3, wish: 'soften' }),
    uprightEdge(0.3, { a: 3, b: 4, wish: 'lose' }),
    uprightEdge(0.4, { a: 1, b: 2, wish: 'keep' }),
    uprightEdge(0.5, { a: 3, b: 4 }),
  ];
  const own = { ...facts, reading: { ...facts.reading, edges } };
  const told = (wash: number) =>
    washEdges(own, slotsOf(wash)).map(({ edge, kind, own: mine, other, inside }) => [
      edges.indexOf(edge),
      kind,
      mine,
      other,
      inside,
    ]);
  expect(told(1)).toEqual([
    [0, 'soft', 3, 0, false],
    [2, 'hard', 1, 2, true],
  ]);
  expect(told(2)).toEqual([
    [0, 'soft', 3, 0, false],
    [1, 'lost', 3, 4, true],
  ]);
  expect(told(3)).toEqual([
    [0, 'soft', 3, 0, false],
    [1, 'lost', 3, 4, false],
  ]);
  const { edges: _, ...none } = own.reading;
  expect(washEdges({ ...own, reading: none }, slotsOf(1))).toEqual([]);
});

test('sides are named by their colour, of one colour by which is lighter', () => {
  expect([0, 1, 2, 9].map((n) => nameShape(sideOf(facts, n)))).toEqual([
    'the white',
    'the dull green',
    'the brown',
    'the rest',
  ]);
  const both = (own: number, other: number) => {
    const { one, two } = bothSides(facts, own, other);
    return [nameShape(one), nameShape(two)];
  };
  expect(both(1, 2)).toEqual(['the dull green', 'the brown']);
  expect(both(1, 3)).toEqual(['the lighter dull green', 'the darker dull green']);
  expect(both(3, 1)).toEqual(['the darker dull green', 'the lighter dull green']);
});

test('names come longest first, their lengths added up, so many at most', () => {
  const named = [
    [{ name: 'a' }, 30],
    [{ name: 'b' }, 50],
    [{ name: 'a' }, 25],
    [{ name: 'c' }, 52],
  ] as const;
  const longest = (most: number) =>
    longestNamed<{ readonly name: string }>(named, most).map(({ name }) => name);
  expect(longest(2)).toEqual(['a', 'c']);
  expect(longest(9)).toEqual(['a', 'c', 'b']);
  expect(longestNamed([], 2)).toEqual([]);
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Point } from '../../../../app/core/colour/lab.ts';
import { edgeProposals, proposalLimits } from '../../../../app/core/decisions/edge-proposals.ts';
import { type Edge, edgeWishes } from '../../../../app/core/reading/edges/edge.ts';
import { nearestOnEdge } from '../../../../app/core/reading/edges/place-on-edge.ts';
import type { ReadingWarning } from '../../../../app/core/reading/reading.ts';
import {
  edgeWhyInWords,
  lensInWords,
} from '../../../../app/core/words/decisions/edge-proposals.ts';
import { keptReading } from '../../../support/reading/kept-reading.ts';
import { madeEdge, uprightEdge } from '../../../support/reading/made-edge.ts';

const facts = (edges: readonly Edge[], warnings: readonly ReadingWarning[] = []) => ({
  ...keptReading,
  sheet: { widthMm: 381, heightMm: 279 },
  raster: { width: 200, height: 100 },
  edges,
  warnings,
});
const proposed = (edges: readonly Edge[], focus: [number, number] | null = [0.1, 0.5]) =>
  edgeProposals(facts(edges), focus).list.map(({ edge, wish }) => [edge, wish]);

describe('what is proposed', () => {
  test('away from the focus: hard and strong softened, slight lost, soft and lost left', () => {
    const edges = [
      uprightEdge(0.8),
      uprightEdge(0.7, { contrast: 11 }),
      uprightEdge(0.6, { kind: 'found', contrast: 6 }),
      uprightEdge(0.9, { kind: 'soft' }),
      uprightEdge(0.9, { kind: 'lost', contrast: 2 }),
    ];
    expect(proposed(edges)).toEqual([
      [0, 'soften'],
      [1, 'lose'],
      [2, 'lose'],
    ]);
  });

  test('a difference of 3.6 values is never said to need no edge, however the sides are planned', () => {
    const strong = uprightEdge(0.8, { contrast: 36, a: 2, b: 3 });
    expect(proposed([strong])).toEqual([[0, 'soften']]);
  });

  test('slight on its line but strong some way off it: not lost', () => {
    const edge = uprightEdge(0.8, { kind: 'found', contrast: 6 });
    const values = Uint8Array.from({ length: 200 * 100 }, (_, i) => {
      const x = i % 200;
      return Math.round(2.55 * (x < 160 ? 80 : x < 162 ? 74 : 40));
    });
    const lightness = { width: 200, height: 100, values };
    expect(edgeProposals(facts([edge]), [0.1, 0.5], lightness).list).toEqual([]);
    expect(edgeProposals(facts([edge]), [0.1, 0.5]).list).toMatchObject([{ wish: 'lose' }]);
    const even = { ...lightness, values: values.map((value) => (value > 180 ? value : 188)) };
    expect(edgeProposals(facts([edge]), [0.1, 0.5], even).list).toMatchObject([{ wish: 'lose' }]);
  });

  test('stretches of one edge are proposed together, as long as all of it', () => {
    const short = { lengthMm: 8 };
    const upper = madeEdge(
      [
        [0.8, 0.1],
        [0.8, 0.4],
      ],
      short,
    );
    const lower = madeEdge(
      [
        [0.8, 0.4],
        [0.8, 0.9],
      ],
      { lengthMm: 9 },
    );
    const { list } = edgeProposals(facts([upper, lower]), [0.1, 0.5]);
    expect(list.map(({ edge, wish }) => [edge, wish])).toEqual([[1, 'soften']]);
    expect(list.map(edgeWhyInWords)[0]).toContain('17 mm long');
    expect(proposed([upper])).toEqual([]);
  });

  test('where a stretch of it is strong the whole is not lost', () => {
    const upper = madeEdge(
      [
        [0.8, 0.1],
        [0.8, 0.4],
      ],
      { kind: 'found', contrast: 6, lengthMm: 80 },
    );
    const lower = madeEdge(
      [
        [0.8, 0.4],
        [0.8, 0.9],
      ],
      { contrast: 30, lengthMm: 20 },
    );
    expect(proposed([upper, lower])).toEqual([]);
  });

  test('at the focus: soft but plain sharpened; not slight, graded or out of focus', () => {
    const soft = { kind: 'soft', widthMm: 6 } as const;
    const edges = [
      uprightEdge(0.12, soft),
      uprightEdge(0.13, { ...soft, contrast: 8 }),
      uprightEdge(0.14, { ...soft, graded: true }),
      uprightEdge(0.15, { ...soft, outOfFocus: true }),
      uprightEdge(0.12),
    ];
    expect(proposed(edges)).toEqual([[0, 'sharpen']]);
    expect(lensInWords(edgeProposals(facts(edges), [0.1, 0.5]).lens)).toMatch(
      /^One edge at your centre of interest is .* the lens/,
    );
    expect(edgeProposals(facts(edges), [0.9, 0.5]).lens).toBe(0);
  });

  test('neither near nor far, or too short for a stroke: left alone', () => {
    expect(proposed([uprightEdge(0.3)])).toEqual([]);
    expect(proposed([uprightEdge(0.8, { lengthMm: 11 })])).toEqual([]);
  });

  test('longer, stronger and farther come first', () => {
    const edges = [
      uprightEdge(0.6),
      uprightEdge(0.6, { lengthMm: 90 }),
      uprightEdge(0.9),
      uprightEdge(0.6, { contrast: 40 }),
    ];
    expect(proposed(edges).map(([edge]) => edge)).toEqual([1, 2, 3]); // no more of one kind
  });

  test('the reason tells the figures', () => {
    const [one] = edgeProposals(facts([uprightEdge(0.6, { contrast: 32 })]), [0.1, 0.5]).list;
    // Half of 381 mm.
    expect(one && edgeWhyInWords(one)).toBe(
      '19 cm from your centre of interest, 40 mm long, hard, 3.2 values of difference: it draws the eye away.',
    );
  });
});

test('a list worked through ends: nothing moves up for what was decided', () => {
  const edges = Array.from({ length: 12 }, (_, i) => uprightEdge(0.5 + i / 40));
  const all = edgeProposals(facts(edges), [0.1, 0.5]).list;
  expect(all).toHaveLength(proposalLimits.mostOfOneWish);
  const decided = edges.map(
    (edge, i): Edge => (all.some((one) => one.edge === i) ? { ...edge, wish: 'soften' } : edge),
  );
  expect(edgeProposals(facts(decided), [0.1, 0.5]).list).toEqual([]);
});

test('without a focus it is asked for, and nothing is proposed; the more so where nearly all is hard', () => {
  const edges = [uprightEdge(0.5), uprightEdge(0.6, { kind: 'found', contrast: 5 })];
  expect(edgeProposals(facts(edges), null).first).toBe('usual');
  const stiff = edgeProposals(facts(edges, [{ code: 'all-hard' }]), null);
  expect(stiff.first).toBe('all-hard');
  expect(stiff.list).toEqual([]);
  expect(edgeProposals(facts(edges), [0.5, 0.5]).first).toBeNull();
});

test('readings without edges have nothing to propose', () => {
  const { edges: _none, ...old } = facts([]);
  expect(edgeProposals(old, [0.5, 0.5]).list).toEqual([]);
});

/** Evenly spread, in steps of a thousandth of the range. */
const between = (least: number, most: number) =>
  fc.integer({ min: 0, max: 1000 }).map((n) => least + (n / 1000) * (most - least));
const place = fc.tuple(between(0, 1), between(0, 1));
/** Within a tenth of its start, or it would hardly ever be all away from the focus. */
const course = fc
  .tuple(
    place,
    fc.array(fc.tuple(between(-0.1, 0.1), between(-0.1, 0.1)), { minLength: 1, maxLength: 4 }),
  )
  .map(([[x, y], steps]): Point[] => [[x, y], ...steps.map(([dx, dy]): Point => [x + dx, y + dy])]);
const anyEdge = fc
  .record({
    kind: fc.constantFrom('hard', 'soft', 'found', 'lost'),
    a: fc.nat(3),
    b: fc.nat(3),
    contrast: between(0, 90),
    lengthMm: between(2, 600),
    widthMm: between(0, 80),
    graded: fc.boolean(),
    outOfFocus: fc.boolean(),
    wish: fc.option(fc.constantFrom(...edgeWishes), { nil: undefined, freq: 1 }),
    path: course,
  })
  .map(({ path, wish, ...other }): Edge => madeEdge(path, wish ? { ...other, wish } : other));

test('valid, at most five, each once, never against a decision, nothing at the focus loses its edge', () => {
  let seen = 0;
  fc.assert(
    fc.property(fc.array(anyEdge, { maxLength: 40, size: 'max' }), place, (edges, focus) => {
      const { list } = edgeProposals(facts(edges), focus);
      expect(list.length).toBeLessThanOrEqual(5);
      expect(new Set(list.map(({ edge }) => edge)).size).toBe(list.length);
      for (const { edge, wish, why } of list) {
        seen++;
        const one = edges[edge] as Edge;
        expect(one).toBeDefined();
        expect(one.wish).toBeUndefined();
        expect(edgeWhyInWords({ wish, why })).toMatch(/\d.*\.$/);
        const way = nearestOnEdge(one, focus, { width: 200, height: 100 }).distance;
        if (wish === 'sharpen') {
          expect(way).toBeLessThanOrEqual(proposalLimits.near);
          expect(one.outOfFocus).toBe(false);
        } else expect(way).toBeGreaterThanOrEqual(proposalLimits.far);
      }
      expect(edgeProposals(facts(edges), focus).list).toEqual(list);
    }),
    { seed: 5, numRuns: 200 },
  );
  expect(seen).toBeGreaterThan(200); // it was not all empty
});

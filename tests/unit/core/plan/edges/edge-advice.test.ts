import { describe, expect, test } from 'vitest';
import { decidedEdges } from '../../../../../app/core/decisions/decided-reading.ts';
import type { Decision, Painting } from '../../../../../app/core/decisions/painting.ts';
import { roomWeather } from '../../../../../app/core/drying/weather.ts';
import { emptyBox } from '../../../../../app/core/paint/own-box.ts';
import { adviseOnEdges, mergedWhere } from '../../../../../app/core/plan/edges/edge-advice.ts';
import { washEdges } from '../../../../../app/core/plan/edges/wash-edges.ts';
import type { PlanFacts } from '../../../../../app/core/plan/plan-facts.ts';
import type { Edge } from '../../../../../app/core/reading/edges/edge.ts';
import { outerBorders, softShare } from '../../../../../app/core/reading/edges/slot-borders.ts';
import type { Border } from '../../../../../app/core/reading/reading.ts';
import type { Slot } from '../../../../../app/core/reading/slot.ts';
import { sheetOf } from '../../../../../app/core/reference/sheet.ts';
import { words } from '../../../../../app/core/words/plan/words.ts';
import { planKeyOf, readingKeyOf } from '../../../../../app/state/painting/read-painting.ts';
import { told } from '../../../../support/plan/told.ts';
import { keptReading } from '../../../../support/reading/kept-reading.ts';
import { uprightEdge } from '../../../../support/reading/made-edge.ts';

const lab = (lightness: number) => [lightness, 0, 0] as const;
/** White, light green, light brown, dark green. */
const slots = [
  { band: 1, family: 1, target: lab(95), reserve: true },
  { band: 2, family: 1, target: lab(75) },
  { band: 2, family: 2, target: lab(74) },
  { band: 3, family: 1, target: lab(30) },
].map(
  (slot): Slot => ({
    ...(keptReading.slots[0] as Slot),
    passage: 'sheet',
    reserve: false,
    ...slot,
  }),
);
const families = [
  { id: 1, lab: lab(50), share: 0.5, name: 'dull green' },
  { id: 2, lab: lab(50), share: 0.5, name: 'brown' },
];
/** The first wash over all but the white, the darks after it. */
const washes = [[1, 2, 3], [3]] as const;

function facts(edges: readonly Edge[], borders: readonly Border[] = []): PlanFacts {
  return {
    reading: {
      ...keptReading,
      raster: { width: 200, height: 100 },
      families,
      slots,
      borders,
      edges,
    },
    slots,
    reserves: keptReading.reserves,
    paints: [],
    passages: [
      {
        passage: 'sheet',
        washes: washes.map((own, i) => ({
          wash: i + 1,
          weak: [],
          full: [],
          mixes: [],
          slots: own,
          after: [],
        })),
      },
    ],
    weather: roomWeather,
    paper: { gsm: 300, fibre: 'cotton' },
  };
}
const said = (edges: readonly Edge[], borders: readonly Border[] = []): string[] =>
  washes.map((own) => words(adviseOnEdges(facts(edges, borders), own)));
/** What each wash paints in one go. */
const merged = (edges: readonly Edge[], borders: readonly Border[] = []) =>
  washes.map((own) => {
    const all = facts(edges, borders);
    return told(mergedWhere(all, own, washEdges(all, own)));
  });
const border = (a: number, b: number, soft: number, lost = 0): Border => ({
  a,
  b,
  lengthMm: 100,
  contrast: 20,
  soft,
  lost,
});

// Limits and figures are (own): the docstrings of what is tested say why.
describe('what the washes say of edges', () => {
  test('nothing decided and nothing soft: nothing', () => {
    expect(said([uprightEdge(0.5, { a: 0, b: 1 })], [border(0, 1, 0.1)])).toEqual(['', '']);
  });

  test('softened: named in the wash that makes it, with its place, however little of the border it is', () => {
    const [first, darks] = said([
      uprightEdge(0.1, { a: 1, b: 3, wish: 'soften' }),
      uprightEdge(0.9, { a: 0, b: 1, wish: 'soften' }),
    ]);
    expect(first).toBe(
      'While it shines, soften these edges with a clean, barely damp brush: the dull green against the white, on the right.',
    );
    expect(darks).toContain('the darker dull green against the lighter dull green, on the left.');
  });

  test('hers come first and are not named twice; measured ones fill up to three', () => {
    const borders = [border(0, 1, 0.9), border(0, 2, 0.95)];
    const [first] = said([uprightEdge(0.9, { a: 0, b: 1, lengthMm: 85, wish: 'soften' })], borders);
    // 5 mm of the first border are soft by themselves: not worth a word.
    expect(first).toMatch(
      /: the dull green against the white, on the right; the brown against the white\.$/,
    );
  });

  test('never more than three are named, measured or hers', () => {
    const soft = [0, 1, 2].map((a) => border(a, 3, 0.95));
    const softened = (count: number): Edge[] =>
      [0.1, 0.5, 0.7, 0.9]
        .slice(0, count)
        .map((x) => uprightEdge(x, { a: 0, b: 3, lengthMm: 10, wish: 'soften' }));
    const named = (count: number): string[] => said(softened(count), soft)[1]?.split('; ') ?? [];
    for (const count of [0, 1, 2, 3, 4]) {
      expect(named(count)).toHaveLength(3);
      // Only hers are named with their place.
      const placed = named(count).filter((text) => /, (on|in) the /.test(text));
      expect(placed).toHaveLength(Math.min(3, count));
    }
  });

  test('kept or made sharp: left crisp beside the softened ones', () => {
    const [first] = said([
      uprightEdge(0.5, { a: 0, b: 1, wish: 'keep' }),
      uprightEdge(0.1, { a: 0, b: 2, kind: 'soft', wish: 'sharpen' }),
      uprightEdge(0.9, { a: 0, b: 2, wish: 'soften' }),
    ]);
    expect(first).toMatch(/damp brush: the brown against the white, on the right\./);
    expect(first).toMatch(/Leave crisp: .*the dull green against the white, in the middle/);
    expect(first).toMatch(/Leave crisp: .*the brown against the white, on the left/);
  });

  test('on wet paper: what meets mostly hard stops the water, stretches between the same two colours together', () => {
    const on = (...borders: Border[]) => words(adviseOnEdges(facts([], borders), washes[0], true));
    const short = (b: number, soft = 0): Border => ({ ...border(0, b, soft), lengthMm: 30 });
    expect(on(short(1))).toBe('');
    expect(on(short(1), short(3))).toBe(
      'These edges stay crisp, so stop the water short of them: the dull green against the white.',
    );
    expect(on(border(0, 2, 0.1))).toMatch(/stop the water short of them: the brown against/);
    expect(on(border(0, 2, 0.2, 0.3))).toBe('');
  });

  test('lost: both in one go, or run out into what is not painted', () => {
    const lost = [
      uprightEdge(0.5, { a: 1, b: 2, wish: 'lose' }),
      uprightEdge(0.1, { a: 2, b: 3, wish: 'lose' }),
    ];
    expect(merged(lost)[0]).toMatchObject({
      pairs: [
        'the dull green and the brown, in the middle',
        'the brown and the dull green, on the left',
      ],
      hers: 2,
    });
    expect(merged(lost)[1]?.pairs).toEqual([]);
    expect(said(lost)).toEqual(['', 'Let the dull green run out into the brown, on the left.']);
  });

  test('of one colour and both finished in one wash: its edge, though no wash parts them later', () => {
    const { passages, ...rest } = facts([uprightEdge(0.5, { a: 1, b: 3, wish: 'lose' })]);
    const [only] = passages[0]?.washes ?? [];
    if (!only) throw new Error('no wash');
    const shared = { ...rest, passages: [{ passage: 'sheet', washes: [only] }] };
    expect(told(mergedWhere(shared, only.slots, washEdges(shared, only.slots)).pairs)).toEqual([
      'the lighter dull green and the darker dull green, in the middle',
    ]);
  });

  test('lost in the photo over most of a border: named where both are painted, at most three', () => {
    const borders = [border(1, 2, 0, 0.8), border(0, 1, 0, 0.9), border(2, 3, 0, 0.3)];
    expect(merged([], borders).map(({ pairs }) => pairs)).toEqual([
      ['the dull green and the brown'],
      [],
    ]);
    const many = [0.1, 0.5, 0.9].flatMap((x) => [
      uprightEdge(x, { a: 1, b: 2, wish: 'lose' }),
      uprightEdge(x, { a: 0, b: 2, wish: 'lose' }),
    ]);
    expect(merged(many)[0]?.pairs).toHaveLength(3);
  });
});

const cut = {
  crop: { centre: [0.5, 0.5], size: [1, 1], turn: 0 },
  sheet: sheetOf('quarter', 'across'),
} as const;

test('softening by hand makes borders soft enough for wet paper', () => {
  const edges = [0.2, 0.4, 0.6, 0.8].map((x) => uprightEdge(x, { a: 0, b: 1, lengthMm: 25 }));
  const { reading } = facts(edges, [border(0, 1, 0)]);
  const share = (count: number): number => {
    const decisions = [0.2, 0.4, 0.6, 0.8]
      .slice(0, count)
      .map((x): Decision => ({ id: `${x}`, at: 0, kind: 'edge', place: [x, 0.5], wish: 'soften' }));
    return softShare(outerBorders(decidedEdges(reading, decisions, cut), washes[0]));
  };
  expect([0, 1, 2, 4].map(share)).toEqual([0, 0.25, 0.5, 1]);
});

test('an edge decided asks for another plan, not for another reading; the focus for neither', () => {
  const painting: Painting = {
    schema: 1,
    id: 'p',
    title: '',
    createdAt: 0,
    updatedAt: 0,
    reference: { photoId: 'f', ...cut },
    decisions: [],
    planIds: [],
    sessionIds: [],
  };
  const withOne = (decision: Decision): Painting => ({ ...painting, decisions: [decision] });
  const edge = withOne({ id: 'a', at: 0, kind: 'edge', place: [0.5, 0.5], wish: 'lose' });
  const focus = withOne({ id: 'a', at: 0, kind: 'focus', place: [0.5, 0.5] });
  expect(readingKeyOf(edge)).toBe(readingKeyOf(painting));
  expect(planKeyOf(edge, emptyBox)).not.toBe(planKeyOf(painting, emptyBox));
  expect(readingKeyOf(focus)).toBe(readingKeyOf(painting));
  expect(planKeyOf(focus, emptyBox)).toBe(planKeyOf(painting, emptyBox));
});

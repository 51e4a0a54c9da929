import { describe, expect, test } from 'vitest';
import type { Mix, Step } from '../../../../../app/core/plan/plan.ts';
import type { Run } from '../../../../../app/core/plan/runs/run.ts';
import { washPlaces } from '../../../../../app/core/plan/runs/wash-places.ts';
import type { ColourSquares } from '../../../../../app/core/reading/colour-squares.ts';
import { explainTags } from '../../../../../app/core/words/plan/beside.ts';
import { madeReading } from '../../../../support/plan/made-reading.ts';

// Which places are told: (own). Ground left, subject right, of one colour and value; they touch.
const raster = { width: 40, height: 30 };
const reading = madeReading(
  ['ground', 'subject'].map((passage) => ({
    passage,
    band: 1,
    family: 1,
    share: 0.5,
    lab: [50, 0, 0],
  })),
);
const slotMap = Uint8Array.from({ length: 1200 }, (_, i) => (i % 40 < 20 ? 0 : 1));
const squares = { across: 4, down: 3, sidePx: 10 } as ColourSquares;
const seen = { slots: reading.slots, slotMap, raster, squares };

const mixes = [
  { id: 'g', puddle: 'A', passage: 'ground', family: 1 },
  { id: 's', puddle: 'B', passage: 'subject', family: 1 },
  { id: 'w', puddle: 'C', passage: 'sheet', family: 1 },
] as unknown as Mix[];
const step = (key: string, kind: Step['kind'] = 'wash', ids = ['g', 's', 'w']): Step =>
  ({ key, kind, slots: [0, 1], mixes: ids }) as unknown as Step;
const run = (more: Partial<Run> = {}): Run => ({
  mix: 'w',
  strength: 'full',
  squares: [0, 3, 8],
  own: [2, 2, 2],
  other: [],
  ...more,
});

describe('the shapes of a step', () => {
  test('what is painted from one mix and touches is one, across the line too where both are painted together', () => {
    expect(washPlaces(step('wash/sheet/1', 'wash', ['w']), { mixes }, seen)).toMatchObject([
      { turn: 1, puddle: 'C', amount: null },
    ]);
    const apart = washPlaces(step('wash/ground/1', 'wash', ['g', 's']), { mixes }, seen);
    expect(apart.map(({ turn, puddle }) => `${turn} ${puddle}`).sort()).toEqual(['1 A', '2 B']);
  });

  test('have no puddle where none is brushed, and no place in steps that are about the whole sheet', () => {
    const places = washPlaces(step('dry/sheet/1', 'dry'), { mixes }, seen);
    expect(places.map(({ puddle }) => puddle)).toEqual([null, null]);
    expect(washPlaces(step('transfer/sheet/0', 'transfer'), { mixes }, seen)).toEqual([]);
  });
});

describe('inside a wash', () => {
  const inside = (one: Run) =>
    washPlaces(step('wash/sheet/1', 'wash', ['w']), { mixes, runs: [one] }, seen).filter(
      ({ turn }) => turn === null,
    );

  test('the second puddle is shown where it has most of the paint', () => {
    const meets = { parts: [], puddle: 'D' };
    expect(inside(run({ meets, other: [0, 1.5, 0.1] }))).toEqual([
      { place: [35 / 40, 5 / 30], turn: null, puddle: 'D', amount: null },
    ]);
    expect(inside(run({ meets, other: [0, 0.5, 0.1] }))).toEqual([]);
    expect(inside(run({ meets: { ...meets, puddle: null }, other: [0, 9, 0] }))).not.toContainEqual(
      expect.objectContaining({ puddle: null }),
    );
  });

  test('of many mixes that meet another, three are shown', () => {
    const meets = { parts: [], puddle: 'D' };
    const many = [0, 1, 2, 3, 4, 8].map((square) =>
      run({ meets, squares: [square, square], own: [1, 1], other: [9, 9] }),
    );
    const wash = step('wash/sheet/1', 'wash', ['w']);
    const seconds = washPlaces(wash, { mixes, runs: many }, seen).filter(
      ({ puddle }) => puddle === 'D',
    );
    expect(seconds.length).toBeGreaterThan(0);
    expect(seconds.length).toBeLessThanOrEqual(3);
  });

  test('strong and thin are shown where they lie, unless the wash is even', () => {
    expect(inside(run({ own: [1, 2, 3] }))).toEqual([
      { place: [5 / 40, 25 / 30], turn: null, puddle: 'C', amount: 'strong' },
      { place: [5 / 40, 5 / 30], turn: null, puddle: 'C', amount: 'thin' },
    ]);
    expect(inside(run({ own: [2, 2.5, 3] }))).toEqual([]);
  });

  test('of many mixes strong and thin are shown in the two that cover most, whatever their order', () => {
    const of = (covered: readonly number[]) =>
      run({ squares: covered, own: covered.map((_, n) => 1 + 3 * n) });
    const [small, large, middling] = [of([1, 2]), of([0, 4, 8, 9]), of([3, 7, 11])];
    const places = washPlaces(
      step('wash/sheet/1', 'wash', ['w']),
      { mixes, runs: [small, large, middling] },
      seen,
    ).filter(({ amount }) => amount === 'strong');
    // The thickest of either: square 9 of four across, square 11.
    expect(places.map(({ place }) => place)).toEqual([
      [15 / 40, 25 / 30],
      [35 / 40, 25 / 30],
    ]);
  });

  test('no tag covers another, and runs of other steps are not told', () => {
    const first = washPlaces(step('wash/sheet/1', 'wash', ['w']), { mixes }, seen)[0];
    const [x, y] = first?.place ?? [0, 0];
    const square = Math.floor(y * 3) * 4 + Math.floor(x * 4);
    const covered = inside(run({ squares: [square, 3, 8], own: [9, 2, 4] }));
    for (const { place } of covered) {
      const away = Math.max(Math.abs(place[0] - x), Math.abs(place[1] - y));
      expect(away).toBeGreaterThanOrEqual(0.1);
    }
    // A mix of the plan that another step brushes; and a run in one square, where nothing is thick or thin.
    expect(inside(run({ mix: 'g', own: [1, 2, 3] }))).toEqual([]);
    expect(
      inside(run({ squares: [3], own: [3], other: [9], meets: { parts: [], puddle: 'D' } })),
    ).toEqual([]);
  });
});

test('the tags are explained by what stands on them, and by nothing else', () => {
  const tag = (turn: number | null, puddle: string, amount: 'strong' | 'thin' | null = null) => ({
    turn,
    puddle,
    amount,
  });
  expect(explainTags([tag(1, 'A'), tag(2, 'B')])).toBe('1 A: paint here first, from puddle A.');
  expect(
    explainTags([tag(1, 'A'), tag(null, 'B'), tag(null, 'A', 'strong'), tag(null, 'A', 'thin')]),
  ).toBe(
    '1 A: paint here first, from puddle A. B alone: let it run in there. A strong: as it is mixed. A thin: the same with more water.',
  );
  expect(explainTags([{ turn: 1, puddle: null, amount: null }])).toBe('');
});

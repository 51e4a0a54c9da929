import { beforeAll, describe, expect, test } from 'vitest';
import { usualLoad } from '../../../../../app/core/paint/consistency.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import { buildPlan } from '../../../../../app/core/plan/build-plan.ts';
import type { SmallTechnique, Step, WashPlan } from '../../../../../app/core/plan/plan.ts';
import { describeBrokenRules } from '../../../../../app/core/plan/rules/check-rules.ts';
import type { White } from '../../../../../app/core/reading/whites/whites.ts';
import { consistencySign } from '../../../../../app/core/words/paint/mix-words.ts';
import { techniqueWindow } from '../../../../../app/core/words/plan/techniques.ts';
import { words } from '../../../../../app/core/words/plan/words.ts';
import { madeReading, tableOf } from '../../../../support/plan/made-reading.ts';
import { type MadeSlot, madeFacts, stepOf } from '../../../../support/plan/made-work.ts';
import { told } from '../../../../support/plan/told.ts';

const limits = { washes: 3, puddlesPerWash: 3 };
const hills = tableOf(
  [97, 74, 52, 28],
  [
    [-10, 20],
    [2, -18],
  ],
);
const box = ['py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna'];
const last: White = {
  at: [0.5, 0.5],
  slot: 0,
  areaMm2: 1,
  shortSideMm: 0.7,
  softShare: 0,
  byHand: false,
  way: 'last',
  why: '',
};
const reading = {
  ...madeReading(hills, [{ a: 2, b: 3, lengthMm: 300, soft: 0, lost: 0.9 }]),
  whites: [last],
};
let plan: WashPlan;
const painting = ['wash', 'lift', 'splatter', 'accents', 'last-lights'];

beforeAll(async () => {
  plan = await buildPlan(reading, { box }, noCheckpoint);
});

// Limits and figures are (own): the docstrings of what is tested say why.
describe('R15: every step says how it is done', () => {
  test('a wash: band, paper, mix, brush, board, edges, what to leave alone, then a drying check', () => {
    const washes = plan.steps.filter(({ kind }) => kind === 'wash');
    expect(washes.length).toBeGreaterThan(1);
    for (const step of told(washes)) {
      expect(step.bands.length).toBeGreaterThan(0);
      expect(step.paper).toBe(step.technique === 'wet-in-wet' ? 'shiny' : 'bone dry');
      const rows = plan.mixes.filter(({ id }) => step.mixes.includes(id));
      expect(rows.length).toBeGreaterThan(0);
      for (const { consistency } of rows) expect(consistencySign).toHaveProperty(consistency);
      expect(step.brush).toMatch(/flat|mop|round|rigger/);
      expect(step.board).toMatch(/flat|°/);
      // Edges: softened, or said to stay as they are.
      expect(`${step.soften} ${step.watch}`).toMatch(/edge/);
      expect(step.watch).toMatch(/leave it alone/);
      const next = plan.steps[step.n];
      expect(next?.kind).toBe('dry');
      expect(next?.prompt).not.toBe('');
    }
  });

  test('the other painting steps name brush and board; those that put nothing wet down do not', () => {
    for (const step of plan.steps) {
      const paints = painting.includes(step.kind);
      expect(step.board !== undefined, step.key).toBe(paints);
      if (step.kind !== 'mask') expect(step.brush !== undefined, step.key).toBe(paints);
    }
  });

  test('the check finds what is missing or out of time', () => {
    expect(describeBrokenRules(plan, limits)).toEqual([]);
    const merging = plan.steps.find(({ touches }) => touches?.[0]?.technique === 'merging') as Step;
    const { brush: _, ...bare } = merging;
    const broken = (step: Step): string =>
      describeBrokenRules(
        { ...plan, steps: plan.steps.map((one) => (one.key === step.key ? step : one)) },
        limits,
      ).join();
    expect(broken(bare)).toMatch(/R15: .*brush/);
    const [first] = merging.touches as readonly [SmallTechnique];
    const touched = (touch: Partial<SmallTechnique>): Step => ({
      ...merging,
      touches: [{ ...first, ...touch }],
    });
    expect(broken(touched({ paper: 'bone dry' }))).toMatch(/R5: .*merging on bone dry paper/);
    expect(broken(touched({ minutes: [0, merging.shineMinutes[1] + 1] }))).toMatch(/R8/);
    expect(broken(touched({ technique: 'water drops', paper: 'satin' }))).toMatch(/R21/);
    expect(broken(touched({ technique: 'scraping', paper: 'bone dry', minutes: null }))).toMatch(
      /R13/,
    );
    const yellow = {
      ...touched({ technique: 'lifting', paper: 'damp', minutes: merging.shineMinutes }),
      mixes: plan.mixes
        .filter(({ parts }) => parts.some(({ paint }) => /py74/.test(paint)))
        .map(({ id }) => id),
    };
    expect(yellow.mixes.length).toBeGreaterThan(0);
    expect(broken(yellow)).toMatch(/R11: .*lifting in staining paint/);
  });
});

test('scraping: the last whites, on cotton paper only', async () => {
  const lights = (one: WashPlan) => one.steps.find(({ kind }) => kind === 'last-lights');
  expect(lights(plan)?.touches).toMatchObject([
    { technique: 'scraping', paper: 'bone dry', minutes: null },
  ]);
  const paper = { gsm: 300, fibre: 'cellulose' } as const;
  const soft = await buildPlan(reading, { box, paper }, noCheckpoint);
  expect(lights(soft)?.touches).toBeUndefined();
  expect(words(lights(soft)?.prompt)).not.toContain('blade');
  expect(words(lights(soft)?.watch)).toMatch(/No blade on this paper/);
  expect(lights(soft)?.cautions).toEqual([]);
  expect(describeBrokenRules(soft, limits)).toEqual([]);
});

describe('brush and board', () => {
  const slot = (sideMm: number, rest: Partial<MadeSlot> = {}): MadeSlot => ({
    lightness: 50,
    share: sideMm ** 2 / (381 * 279),
    largestMm2: sideMm ** 2,
    ...rest,
  });

  test('the largest brush that will do it', () => {
    const brush = (sideMm: number): string | undefined =>
      stepOf(madeFacts({ slots: [slot(300), slot(sideMm)], washes: { sheet: [[0, 1], [1]] } }), 2)
        .brush;
    expect([250, 150, 60, 25, 10, 5, 2].map(brush)).toEqual([
      'a large flat (40 to 50 mm) or a mop',
      'a flat (20 to 25 mm) or a mop',
      'a mop or a round 12',
      'a round 12',
      'a round 8',
      'a round 6',
      'a rigger',
    ]);
  });

  test('accents: at most two puddles, none lighter than a value above the darkest', () => {
    const accents = plan.steps.find(({ kind }) => kind === 'accents');
    const rows = plan.mixes.filter(({ id }) => accents?.mixes.includes(id));
    expect([1, 2]).toContain(rows.length);
    const darkest = Math.min(...plan.mixes.map(({ expected }) => expected[0]));
    for (const { expected } of rows) expect(expected[0]).toBeLessThanOrEqual(darkest + 10);
  });

  test('the first wash by all it covers; later a small one for many small shapes', () => {
    const bits = slot(20, { share: 0.3, shapes: 60, smallShapes: 30 });
    const facts = madeFacts({ slots: [bits], washes: { sheet: [[0], [0]] } });
    expect(stepOf(facts, 1).brush).toBe('a flat (20 to 25 mm) or a mop');
    expect(stepOf(facts, 2).brush).toBe('a round 12; a round 6 for the small shapes');
  });

  test('flat for wet-in-wet, tilted for a bead', () => {
    const facts = madeFacts({ slots: [slot(150)], washes: { sheet: [[0], [0]] } });
    expect(stepOf(facts, 1, 'wet-in-wet').board).toMatch(/^flat/);
    expect(stepOf(facts, 1).board).toMatch(/15°.*bead/);
    expect(stepOf(facts, 2, 'glaze').board).toMatch(/15°/);
    expect(stepOf(facts, 2).board).toMatch(/10°/);
  });

  test('flat, and no bead asked for, where the colours are too thick to run', () => {
    const loads = { 1: usualLoad('cream') };
    const facts = madeFacts({ slots: [slot(150)], washes: { sheet: [[0]] }, loads });
    expect(stepOf(facts, 1).board).toMatch(/^flat/);
    expect(stepOf(facts, 1).prompt).not.toMatch(/bead/);
  });
});

test('the window in words: the sign before the minutes', () => {
  const words = (paper: SmallTechnique['paper'], minutes: SmallTechnique['minutes']) =>
    techniqueWindow({ paper, minutes }, [3, minutes?.[1] ?? 0]);
  expect(words('shiny', [0, 12])).toBe('while it shines; the shine goes in 3–\u206012 min');
  expect(words('bone dry', [0, 0.5])).toBe('while it shines; the shine goes in up to a minute');
  expect(words('satin', [0.5, 12])).toBe('as the shine goes, after ½–\u206012 min');
  expect(words('damp', [3, 20])).toBe('once the shine has gone, 3–\u206020 min after the stroke');
  expect(words('bone dry', null)).toBe('on bone dry paper');
});

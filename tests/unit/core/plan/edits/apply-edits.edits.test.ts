import { beforeAll, describe, expect, it } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import type { PlanEdit } from '../../../../../app/core/decisions/plan-edit.ts';
import type { PlanFacts } from '../../../../../app/core/plan/plan-facts.ts';
import { editedPlan } from '../../../../support/plan/edited-plan.ts';
import {
  hillsReading,
  mistReading,
  oneColour,
  twoPassages,
} from '../../../../support/plan/made-pictures.ts';
import { paintsNamed, solvedFacts } from '../../../../support/plan/solved-facts.ts';

const paints = paintsNamed('py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna');
let facts: PlanFacts;
let single: PlanFacts;
let two: PlanFacts;
beforeAll(async () => {
  facts = await solvedFacts(hillsReading(), paints);
  single = await solvedFacts(oneColour(), paints);
  two = await solvedFacts(twoPassages(), paints);
});

const hills = (...edits: PlanEdit[]) => editedPlan(facts, edits);
const skip = (key: string, skipped = true): PlanEdit => ({ kind: 'skip', key, skipped });
const last = (plan: ReturnType<typeof hills>): readonly Lab[] => plan.steps.at(-1)?.after ?? [];
const darkOf = (plan: ReturnType<typeof hills>): number =>
  last(plan)[facts.slots.findIndex(({ band }) => band === 4)]?.[0] ?? Number.NaN;

it('as planned nothing is broken and nothing is said', () => {
  const plan = hills();
  expect(plan.broken).toEqual([]);
  expect(plan.steps.some(({ consequence }) => consequence)).toBe(false);
  expect(plan.leftOut).toEqual([]);
});

describe('leaving out', () => {
  it('a wash: its drying check goes too, the sheet stays lighter, and it is said', () => {
    const plan = hills(skip('wash/sheet/3'));
    expect(plan.keys).not.toContain('wash/sheet/3');
    expect(plan.keys).not.toContain('dry/sheet/3');
    expect(darkOf(plan)).toBeGreaterThan(darkOf(hills()) + 8);
    expect(plan.find('wash/sheet/2')?.consequence).toMatch(/lighter than planned/);
    expect(plan.leftOut).toEqual([{ key: 'wash/sheet/3', title: 'Darks' }]);
    expect(plan.steps.map(({ n }) => n)).toEqual(plan.steps.map((_, i) => i + 1));
  });

  it('put back, all is as it was', () => {
    expect(hills(skip('wash/sheet/3'), skip('wash/sheet/3', false))).toMatchObject({
      steps: hills().steps,
      leftOut: [],
    });
  });

  it('a drying check: what comes next runs', () => {
    const plan = hills(skip('dry/sheet/1'));
    expect(plan.keys).not.toContain('dry/sheet/1');
    expect(plan.keys).toContain('dry/sheet/2');
    expect(plan.find('wash/sheet/2')?.consequence).toMatch(/not dry: .*mud|not dry: .*backruns/);
    expect(plan.leftOut).toEqual([{ key: 'dry/sheet/1', title: 'Drying check' }]);
  });
});

describe('adding', () => {
  const add = (what: 'wash' | 'dry' | 'lift' | 'splatter' | 'accents', after: string | null) =>
    ({ kind: 'add', id: 'a', what, mix: what === 'wash' ? 'sheet/2/1' : null, after }) as const;

  it('one more glaze of a row darkens what that row was laid on, and nothing else', () => {
    const plan = hills(add('wash', 'wash/sheet/2'));
    const at = plan.keys.indexOf('wash/sheet/2/add-a');
    expect(plan.keys[at - 1]).toBe('dry/sheet/2');
    expect(plan.keys[at + 1]).toBe('dry/sheet/2/add-a');
    const [before, after] = [plan.steps[at - 1]?.after ?? [], plan.steps[at]?.after ?? []];
    for (const [i, slot] of facts.slots.entries()) {
      const touched = plan.steps[at]?.slots.includes(i);
      expect(touched).toBe(slot.family === 1 && slot.band >= 3);
      if (touched) expect(after[i]?.[0]).toBeLessThan((before[i]?.[0] ?? 0) - 0.5);
      else expect(after[i]).toEqual(before[i]);
    }
    expect(plan.find('wash/sheet/2/add-a')?.prompt).toContain('once more over the colour 1 shapes');
  });

  it('lifting where staining paint or none lies is told', async () => {
    expect(hills(add('lift', 'transfer/sheet/0')).find('lift/sheet/add-a')?.consequence).toMatch(
      /no paint to lift here yet/,
    );
    const staining = await solvedFacts(hillsReading(), paintsNamed('pb27-prussian-blue'), 2);
    const plan = editedPlan(staining, [add('lift', 'wash/sheet/2')]);
    expect(plan.find('lift/sheet/add-a')?.consequence).toMatch(/Staining paint/);
  });

  it('splatter in a plain picture is told, in broken shapes not', () => {
    expect(
      hills(add('splatter', 'wash/sheet/3')).find('splatter/sheet/add-a')?.consequence,
    ).toMatch(/accident/);
    const broken = editedPlan(single, [add('splatter', 'accents/sheet/0')]);
    expect(broken.find('splatter/sheet/add-a')).toBeDefined();
    expect(broken.find('splatter/sheet/add-a')?.consequence).toBeUndefined();
  });

  it('a drying check takes the place of one she left out', () => {
    const plan = hills(skip('dry/sheet/1'), add('dry', 'wash/sheet/1'));
    expect(plan.broken).toEqual([]);
    expect(plan.keys[plan.keys.indexOf('wash/sheet/1') + 1]).toBe('dry/sheet/add-a');
  });
});

describe('moving', () => {
  it('darks before the middle values: they smear', () => {
    const plan = hills({ kind: 'move', key: 'wash/sheet/3', after: 'wash/sheet/1' });
    expect(plan.keys.indexOf('wash/sheet/3')).toBeLessThan(plan.keys.indexOf('wash/sheet/2'));
    expect(plan.find('wash/sheet/2')?.consequence).toMatch(/darks that lie there already/);
    // The drying checks went with their washes.
    expect(plan.keys[plan.keys.indexOf('wash/sheet/3') + 1]).toBe('dry/sheet/3');
  });

  it('after a drying check is after the wash it waits for; accents under a wash are told', () => {
    const plan = hills({ kind: 'move', key: 'accents/sheet/0', after: 'dry/sheet/1' });
    expect(plan.keys.slice(4, 7)).toEqual([
      'dry/sheet/1',
      'accents/sheet/0',
      'dry/accents/sheet/0',
    ]);
    expect(plan.find('accents/sheet/0')?.consequence).toMatch(/smear/);
  });

  it('to the very start', () => {
    const plan = hills({ kind: 'move', key: 'transfer/sheet/0', after: null });
    expect(plan.keys[0]).toBe('transfer/sheet/0');
    expect(plan.broken).toEqual([]);
  });

  it('between passages', () => {
    const washes = editedPlan(two, []).keys.filter((key) => key.startsWith('wash/'));
    const [first, , , other] = washes as [string, string, string, string];
    const plan = editedPlan(two, [{ kind: 'move', key: other, after: first }]);
    expect(plan.broken.map(({ rule }) => rule)).toContain('R18');
  });
});

describe('two goes', () => {
  it('each some of the colours, about half the area, the sheet the same in the end', () => {
    const plan = hills({ kind: 'split', key: 'wash/sheet/1' });
    const [a, b] = [plan.find('wash/sheet/1'), plan.find('wash/sheet/1/b')];
    expect(a?.families).toEqual([1]);
    expect(b?.families).toEqual([2]);
    expect(plan.keys.slice(3, 7)).toEqual([
      'wash/sheet/1',
      'dry/sheet/1',
      'wash/sheet/1/b',
      'dry/sheet/1/b',
    ]);
    expect(last(plan)).toEqual(last(hills()));
    expect(plan.broken).toEqual([]);
  });

  it('together again they are the wash they were', () => {
    const goes: PlanEdit[] = [
      { kind: 'split', key: 'wash/sheet/2' },
      { kind: 'merge', key: 'wash/sheet/2' },
    ];
    expect(hills(...goes).steps).toEqual(hills().steps);
  });

  it('one colour is parted by its values', () => {
    const plan = editedPlan(single, [{ kind: 'split', key: 'wash/sheet/1' }]);
    const [a, b] = [plan.find('wash/sheet/1'), plan.find('wash/sheet/1/b')];
    expect(a?.slots.length).toBeGreaterThan(0);
    expect(b?.slots.length).toBeGreaterThan(0);
    expect(a?.slots.some((i) => b?.slots.includes(i))).toBe(false);
  });
});

it('two washes in one go: both layers, and no edge between the values', () => {
  const plan = hills({ kind: 'merge', key: 'wash/sheet/2' });
  const merged = plan.find('wash/sheet/2');
  expect(plan.keys).not.toContain('wash/sheet/3');
  expect(merged?.bands).toEqual([3, 4]);
  expect(merged?.consequence).toMatch(/no crisp edge|backruns/);
  expect(last(plan)).toEqual(last(hills()));
});

describe('technique', () => {
  const painted = (
    technique: 'wet-in-wet' | 'glaze' | 'dry brush' | 'lifting',
    key = 'wash/sheet/2',
  ) => hills({ kind: 'technique', key, technique });

  it('wet: the paper, the words and the drying follow', () => {
    const [wet, dry] = [painted('wet-in-wet'), hills()].map((plan) => plan.find('wash/sheet/2'));
    expect(wet?.paper).toBe('shiny');
    expect(wet?.prompt).toMatch(/^Wet the/);
    expect(wet?.dryMinutes[0]).toBeGreaterThan(dry?.dryMinutes[0] ?? 0);
  });

  it('wet paper floods many small whites', async () => {
    const reading = mistReading();
    const hard = { ...reading, borders: reading.borders.map((one) => ({ ...one, soft: 0.1 })) };
    const many = await solvedFacts(hard, paints);
    const edits = [{ kind: 'technique', key: 'wash/sheet/1', technique: 'wet-in-wet' }] as const;
    const { consequence, alsoHappens } = editedPlan(many, edits).find('wash/sheet/1') ?? {};
    expect(consequence).toMatch(/into the 18 small whites/);
    // The gravest alone; the rest on request.
    expect(consequence).not.toMatch(/crisp edges/);
    expect(alsoHappens?.join(' ')).toMatch(/crisp edges/);
  });

  it('a dry brush leaves specks of paper: lighter, and it is told', () => {
    const plan = painted('dry brush', 'wash/sheet/3');
    expect(darkOf(plan)).toBeGreaterThan(darkOf(hills()) + 4);
    expect(plan.find('wash/sheet/3')?.prompt).toMatch(/tops of the paper/);
    expect(plan.find('wash/sheet/3')?.dryMinutes[1]).toBeLessThan(
      hills().find('wash/sheet/3')?.dryMinutes[1] ?? 0,
    );
  });

  it('wetting paint that lifts is told', async () => {
    const lifting = await solvedFacts(
      hillsReading(),
      paintsNamed('pg18-viridian', 'pb74-cobalt-deep'),
    );
    const edits = [{ kind: 'technique', key: 'wash/sheet/2', technique: 'wet-in-wet' }] as const;
    expect(editedPlan(lifting, edits).find('wash/sheet/2')?.consequence).toMatch(/lifts easily/);
  });

  it('one that makes no sense there changes nothing', () => {
    expect(painted('lifting').steps).toEqual(hills().steps);
  });
});

it('changes that name what is not there wait', () => {
  const waiting: PlanEdit[] = [
    skip('wash/sheet/9'),
    { kind: 'move', key: 'mask/sheet/0', after: null },
    { kind: 'move', key: 'wash/sheet/1', after: 'mask/sheet/0' },
    { kind: 'merge', key: 'wash/sheet/3' },
    { kind: 'split', key: 'wash/sheet/1/b' },
    { kind: 'add', id: 'x', what: 'wash', mix: 'sheet/9/9', after: null },
    { kind: 'mix', mix: 'sheet/9/9', parts: [], load: 1 },
  ];
  const plan = hills(...waiting);
  expect(plan.steps).toEqual(hills().steps);
  expect(plan.leftOut).toEqual([]);
});

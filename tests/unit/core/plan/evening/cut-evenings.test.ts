import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import { buildPlan } from '../../../../../app/core/plan/build-plan.ts';
import { cutEvenings, limitSteps } from '../../../../../app/core/plan/evening/cut-evenings.ts';
import { eveningOf, isPaintingStep } from '../../../../../app/core/plan/evening/evening-times.ts';
import type { Step } from '../../../../../app/core/plan/plan.ts';
import { createPlanMemory } from '../../../../../app/core/plan/plan-memory.ts';
import { quietStep } from '../../../../../app/core/plan/steps/step-draft.ts';
import { words } from '../../../../../app/core/words/plan/words.ts';
import { madeReading, tableOf } from '../../../../support/plan/made-reading.ts';

const step = (kind: Step['kind'], key: string, isWet = false): Step => ({
  ...quietStep,
  n: 1,
  after: [],
  key,
  kind,
  title: '',
  prompt: '.',
  paintMinutes: [1, 2],
  dryMinutes: isWet ? [10, 20] : [0, 0],
});

/** A wash each, some of them wet-in-wet over each other without drying in between. */
function stepsOf(washes: readonly { passage: string; dries: boolean }[]): Step[] {
  const work = washes.flatMap(({ passage, dries }, i) => [
    step('wash', `wash/${passage}/${i}`, true),
    ...(dries ? [step('dry', `dry/${passage}/${i}`)] : []),
  ]);
  return [
    step('prepare', 'prepare/sheet/0'),
    step('mask', 'mask/sheet/0'),
    ...work,
    step('last-look', 'last-look/sheet/0'),
  ].map((each, i) => ({ ...each, n: i + 1 }));
}

const paintingOf = (steps: readonly Step[], evening: number): number =>
  steps.filter((each) => isPaintingStep(each) && eveningOf(each) === evening).length;

const evenings = (steps: readonly Step[]): number => Math.max(...steps.map(eveningOf));

/** Whether the sheet is wet before step `at`. */
function isWetBefore(steps: readonly Step[], at: number): boolean {
  let wet = false;
  for (const each of steps.slice(0, at))
    wet = each.kind === 'dry' ? false : wet || each.dryMinutes[1] > 0;
  return wet;
}

describe('evenings', () => {
  it('hold at most seven painting steps and end only where the sheet is dry', () => {
    const wash = fc.record({ passage: fc.constantFrom('ground', 'subject'), dries: fc.boolean() });
    fc.assert(
      fc.property(fc.array(wash, { minLength: 1, maxLength: 16 }), fc.boolean(), (washes, all) => {
        const steps = stepsOf(washes.map((each) => ({ ...each, dries: all || each.dries })));
        const cut = cutEvenings(steps);
        expect(cut.map(({ key }) => key)).toEqual(steps.map(({ key }) => key));
        const count = evenings(cut);
        if (washes.length <= 7) expect(cut).toBe(steps);
        for (let i = 1; i < cut.length; i++) {
          const [before, here] = [eveningOf(cut[i - 1] as Step), eveningOf(cut[i] as Step)];
          expect(here - before === 0 || here - before === 1).toBe(true);
          if (here > before) expect(isWetBefore(cut, i)).toBe(false);
        }
        for (let n = 1; n <= count; n++) expect(paintingOf(cut, n)).toBeGreaterThan(0);
        if (all) {
          for (let n = 1; n <= count; n++) expect(paintingOf(cut, n)).toBeLessThanOrEqual(7);
          expect(count).toBe(Math.ceil(washes.length / 7));
        }
      }),
      { numRuns: 150, seed: 3 },
    );
  });

  it('end between passages where that may be', () => {
    for (const first of [2, 3, 5, 7]) {
      const washes = Array.from({ length: 9 }, (_, i) => ({
        passage: i < first ? 'ground' : 'subject',
        dries: true,
      }));
      const cut = cutEvenings(stepsOf(washes));
      const second = cut.find((each) => eveningOf(each) === 2);
      expect(second?.key).toBe(`wash/subject/${first}`);
    }
  });

  it('are one, of the very steps, however many run into each other wet', () => {
    const steps = stepsOf(Array.from({ length: 10 }, () => ({ passage: 'sheet', dries: false })));
    expect(cutEvenings(steps)).toBe(steps);
  });

  it('say what becomes of the sheet, and of the mask on it, beside the break', () => {
    const washes = Array.from({ length: 8 }, () => ({ passage: 'sheet', dries: true }));
    const cut = cutEvenings(stepsOf(washes));
    const at = cut.findIndex((each) => eveningOf(each) === 2);
    expect(cut[at - 1]?.kind).toBe('dry');
    expect(words(cut[at - 1]?.notes?.[0])).toMatch(
      /^The first evening ends here\. .*board.*days its label/,
    );
    expect(words(cut[at]?.notes?.[0])).toMatch(/^Second evening: the sheet must be bone dry/);
  });
});

it('seven values in two passages, eight washes asked for: at most twelve painting steps, in two evenings', async () => {
  const slots = tableOf([94, 84, 72, 60, 48, 36, 24], [[2, -18]]).flatMap((slot) =>
    ['ground', 'subject'].map((passage) => ({
      ...slot,
      passage,
      share: slot.share / 2,
      shapes: 120,
      smallShapes: 100,
    })),
  );
  const soft = [{ a: 4, b: 6, lengthMm: 400, soft: 0.9, contrast: 25 }];
  const reading = madeReading(slots, soft);
  const memory = createPlanMemory();
  // All of them lift easily: soft lights are lifted too.
  const chosen = ['pg18-viridian', 'pb74-cobalt-deep', 'pv16-manganese-violet'];
  const wishes = { box: chosen, chosen, washes: 8 };
  const plan = await buildPlan(reading, wishes, noCheckpoint, memory);
  const painting = plan.steps.filter(isPaintingStep);
  expect(painting.length).toBeLessThanOrEqual(12);
  expect(painting.length).toBeGreaterThan(7);
  expect(evenings(plan.steps)).toBe(2);
  for (const evening of [1, 2]) expect(paintingOf(plan.steps, evening)).toBeLessThanOrEqual(7);
  const second = plan.steps.find((each) => eveningOf(each) === 2);
  expect(second?.key).toMatch(/^wash\/\w+\/1$/);
  expect(words(plan.washesWhy)).toMatch(
    /^Five washes, not the 8 you asked for: more would make too many/,
  );
  // What is left out for it is told, and comes back where she asks for it.
  expect(words(plan.stepsWhy)).toBe(
    'Left out, as the plan is long enough: specks and lift the soft lights.',
  );
  const out = plan.leftOut?.find(({ key }) => key.startsWith('splatter/'));
  const back = { kind: 'skip', key: out?.key ?? 'none', skipped: false } as const;
  const hers = await buildPlan(reading, { ...wishes, edits: [back] }, noCheckpoint, memory);
  expect(hers.steps.some(({ kind }) => kind === 'splatter')).toBe(true);
  expect(hers.steps.filter(isPaintingStep)).toHaveLength(painting.length + 1);
});

const quietStepOf = (kind: Step['kind'], n: number, title: string = kind): Step => ({
  ...quietStep,
  n,
  after: [],
  key: `${kind}/sheet/${n}`,
  kind,
  title,
  prompt: '.',
  paintMinutes: [1, 2],
});

const planOf = (washes: number): Step[] =>
  [
    ...Array.from({ length: washes }, () => 'wash' as const),
    'lift' as const,
    'splatter' as const,
    'accents' as const,
    'last-lights' as const,
    'last-look' as const,
  ].map((kind, n) => quietStepOf(kind, n));

const keysOut = (washes: number): string[] =>
  limitSteps(planOf(washes)).edits.map(
    (edit) => ('key' in edit ? edit.key : '').split('/')[0] ?? '',
  );

describe('twelve painting steps', () => {
  it.each([
    [8, []],
    [9, ['splatter']],
    [10, ['splatter', 'lift']],
    [11, ['splatter', 'lift', 'accents']],
    [13, ['splatter', 'lift', 'accents']],
  ])('with %i washes leave out %j, the last lights never', (washes, out) => {
    expect(keysOut(washes)).toEqual(out);
  });

  it('say what is left out', () => {
    expect(limitSteps(planOf(8)).why).toBeUndefined();
    expect(words(limitSteps(planOf(10)).why)).toBe(
      'Left out, as the plan is long enough: splatter and lift.',
    );
  });
});

describe('fourteen steps in all', () => {
  /** So many washes, each with its drying check, and the finishing steps with theirs. */
  const dried = (washes: number): Step[] => [
    ...planOf(washes).flatMap((one) =>
      one.kind === 'wash' || one.kind === 'splatter'
        ? [one, quietStepOf('dry', one.n)].map((each) =>
            each.kind === 'dry' ? { ...each, key: `dry/${one.key.replace(/^wash\//, '')}` } : each,
          )
        : [one],
    ),
  ];
  it.each([
    // 8 steps of washes, 5 others and the drying check after the splatter are 14.
    [4, []],
    [5, ['splatter']],
    [6, ['splatter', 'lift']],
    [7, ['splatter', 'lift']],
  ])('with %i washes leave out %j, never details, touches or lights', (washes, out) => {
    const { edits } = limitSteps(dried(washes));
    expect(edits.map((edit) => ('key' in edit ? edit.key.split('/')[0] : ''))).toEqual(out);
  });
});

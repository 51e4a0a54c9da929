import { expect, test } from 'vitest';
import type { Lab } from '../../../../app/core/colour/lab.ts';
import type { Advice } from '../../../../app/core/compare/comparison.ts';
import { mendShape } from '../../../../app/core/compare/mend.ts';
import { mendedPlan } from '../../../../app/core/compare/mended-plan.ts';
import { takenAdvice } from '../../../../app/core/compare/taken-advice.ts';
import { longestPrompt } from '../../../../app/core/limits.ts';
import type { Step, WashPlan } from '../../../../app/core/plan/plan.ts';
import { foldSession } from '../../../../app/core/session/fold-session.ts';
import { words } from '../../../../app/core/words/plan/words.ts';
import { plannedSmall } from '../../../support/compare/photographed-plan.ts';
import { eventSample } from '../../../support/storage/kept-samples.ts';

// Limits (own).
const picture = plannedSmall('tests/fixtures/mountain-snow.jpg', [
  'py43-yellow-ochre',
  'pb29-ultramarine-blue',
  'pbr7-burnt-sienna',
  'pg7-phthalocyanine-green',
]);

const washesOf = ({ steps }: WashPlan): Step[] => steps.filter(({ kind }) => kind === 'wash');

/** What is advised where the largest slot of a wash, painted again later or not, came out otherwise by so much L*. */
async function advised(wash: number, by: number) {
  const { plan, reading } = await picture;
  const step = washesOf(plan).at(wash) as Step;
  const again = new Set(washesOf(plan).flatMap(({ n, slots }) => (n > step.n ? slots : [])));
  const slots = step.slots.filter((slot) => wash < 0 || again.has(slot));
  const slot = plan.slots.reduce(
    (best, { share, reserve }, i) =>
      !reserve && slots.includes(i) && share > (plan.slots[best]?.share ?? 0) ? i : best,
    slots[0] as number,
  );
  const expected = step.after[slot] as Lab;
  const measured: Lab = [expected[0] + by, expected[1], expected[2]];
  const mended = mendShape(plan, step.n, slot, expected, measured, 5000);
  const advice: Advice = {
    ...mended,
    ...{ weight: 1, slot, shapes: [1], at: [0.5, 0.5], share: 0.05 },
    ...{ difference: by, drift: [], measured, expected },
  };
  return { plan, reading, step, slot, advice };
}

const afterIn = ({ steps }: WashPlan, key: string, slot: number): Lab =>
  steps.find((step) => step.key === key)?.after[slot] as Lab;

test('what came out too light at the end is glazed in a step of its own, which names all it needs', async () => {
  const { plan, reading, step, slot, advice } = await advised(-1, 9);
  expect(advice.mending).toBe('glaze');
  const next = plan.steps[plan.steps.indexOf(step) + 1]?.key ?? null;
  const taken = takenAdvice(advice, step.key, next, [], plan);
  const mended = mendedPlan(plan, reading, [taken]);
  expect(mended).toMatchObject({ basedOn: plan.id });
  expect(mended.steps.map(({ n }) => n)).toEqual(mended.steps.map((_, i) => i + 1));
  expect(new Set(mended.steps.map(({ key }) => key)).size).toBe(mended.steps.length);
  const own = mended.steps.find(({ key }) => key.startsWith('mend/')) as Step;
  expect(own).toMatchObject({ kind: 'wash', technique: 'glaze', slots: [slot], paper: 'bone dry' });
  expect(words(own.prompt).length).toBeLessThanOrEqual(longestPrompt);
  expect(words(own.prompt)).toMatch(/^Glaze /);
  const mix = mended.mixes.find(({ id }) => own.mixes.includes(id));
  expect(mix).toMatchObject({ parts: advice.parts, load: advice.load });
  expect(mix?.puddle).toMatch(/^[A-Z]$/);
  // It ends as planned: nearer to it than what was measured, by far.
  const after = own.after[slot] as Lab;
  expect(Math.abs(after[0] - advice.expected[0])).toBeLessThan(2);
  // What was planned before is as it was, in the plan that is kept too.
  expect(afterIn(mended, step.key, slot)).toEqual(afterIn(plan, step.key, slot));
  expect(plan.steps.some(({ key }) => key.startsWith('mend/'))).toBe(false);
});

test.each([4.5, -8])(
  'where a wash is still to come that wash is told otherwise (%s L*), and what follows is reckoned from the measured sheet',
  async (by) => {
    const { plan, reading, step, slot, advice } = await advised(0, by);
    expect(advice.mending).toBe(by > 0 ? 'stronger-next' : 'weaker-next');
    const next = plan.steps[plan.steps.indexOf(step) + 1]?.key ?? null;
    const taken = takenAdvice(advice, step.key, next, [], plan);
    const mended = mendedPlan(plan, reading, [taken]);
    expect(mended.steps.length).toBe(plan.steps.length);
    const wash = mended.steps.find(({ key }) => key === taken.before) as Step;
    expect(words(wash.notes?.at(-1))).toContain(by > 0 ? 'stronger' : 'weaker');
    expect(Math.abs((wash.after[slot] as Lab)[0] - advice.predicted[0])).toBeLessThan(1.5);
  },
);

test.each(['opaque-white', 'leave-as-is'] as const)(
  '%s: what it leaves to be desired stays, whatever is painted later',
  async (mending) => {
    const { plan, reading, step, slot, advice } = await advised(0, -8);
    const short = -3;
    const [l, a, b] = advice.expected;
    const next = plan.steps[plan.steps.indexOf(step) + 1]?.key ?? null;
    const left: Advice = { ...advice, mending, predicted: [l + short, a, b] };
    const mended = mendedPlan(plan, reading, [takenAdvice(left, step.key, next, [], plan)]);
    const later = plan.steps.filter(({ n, kind }) => n > step.n && kind === 'wash');
    expect(later.length).toBeGreaterThan(0);
    for (const { key } of later)
      expect(afterIn(mended, key, slot)[0] - afterIn(plan, key, slot)[0]).toBeCloseTo(short, 6);
  },
);

test('the session comes to the new step next, and to what was planned after it', async () => {
  const { plan, reading, step, advice } = await advised(-1, 9);
  const index = plan.steps.indexOf(step);
  const next = plan.steps[index + 1]?.key ?? null;
  const mended = mendedPlan(plan, reading, [takenAdvice(advice, step.key, next, [], plan)]);
  const done = plan.steps
    .slice(0, index + 1)
    .flatMap(({ key }) => [
      { kind: 'step-begun', key } as const,
      { kind: 'step-done', key } as const,
    ]);
  const log = done.map((what, seq) => eventSample('s', seq, what));
  const stands = foldSession(mended.steps, log);
  expect(mended.steps[stands.stepIndex]?.key).toMatch(/^mend\//);
  const key = mended.steps[stands.stepIndex]?.key ?? '';
  const on = [{ kind: 'step-begun', key } as const, { kind: 'step-done', key } as const];
  const later = foldSession(mended.steps, [
    ...log,
    ...on.map((what, n) => eventSample('s', log.length + n, what)),
  ]);
  expect(later.doneKeys).toContain(key);
});

test('only the squares under the shapes look otherwise', async () => {
  const { plan, reading, step, slot, advice } = await advised(-1, 9);
  const rows = reading.squares?.slots.flatMap((each, row) => (each === slot ? [row] : [])) ?? [];
  const some = rows.slice(0, Math.floor(rows.length / 3));
  expect(some.length).toBeGreaterThan(3);
  const dark = { ...advice, predicted: [advice.expected[0] - 6, 0, 0] as const };
  const next = plan.steps[plan.steps.indexOf(step) + 1]?.key ?? null;
  const mended = mendedPlan(plan, reading, [takenAdvice(dark, step.key, next, some, plan)]);
  const own = mended.steps.find(({ key }) => key.startsWith('mend/'));
  const changed = rows.filter((row) =>
    [0, 1, 2].some((c) => own?.look?.[3 * row + c] !== step.look?.[3 * row + c]),
  );
  expect(changed).toEqual(some);
});

test('a place that is not in the plan changes nothing', async () => {
  const { plan, reading, advice } = await advised(-1, 9);
  expect(mendedPlan(plan, reading, [takenAdvice(advice, 'gone', null, [], plan)])).toBe(plan);
  expect(mendedPlan(plan, reading, [])).toBe(plan);
});

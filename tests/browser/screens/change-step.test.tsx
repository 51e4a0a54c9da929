import { signal } from '@preact/signals';
import { beforeEach, expect, test } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import type { Decision, NewDecision, Painting } from '../../../app/core/decisions/painting.ts';
import { standingPlanEdits } from '../../../app/core/decisions/standing-decisions.ts';
import { buildPlan } from '../../../app/core/plan/build-plan.ts';
import type { WashPlan } from '../../../app/core/plan/plan.ts';
import { createPlanMemory } from '../../../app/core/plan/plan-memory.ts';
import { ChangeStep } from '../../../app/screens/plan/change-step.tsx';
import { useStepInView } from '../../../app/screens/plan/plan-screen.tsx';
import type { Studio } from '../../../app/state/painting/studio.ts';
import { madeReading, tableOf } from '../../support/plan/made-reading.ts';
import { type Shown, shown } from './shown.ts';

const reading = madeReading(
  tableOf(
    [97, 74, 52, 28],
    [
      [4, 36],
      [-2, -22],
    ],
  ),
);
const chosen = ['py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna'];
const memory = createPlanMemory();
const planned = (decisions: readonly Decision[]): Promise<WashPlan> =>
  buildPlan(
    reading,
    { chosen, washes: 3, edits: standingPlanEdits(decisions) },
    async () => {},
    memory,
  );
const first = await planned([]);

const plan = signal<WashPlan>(first);
const painting = signal<Painting | null>(null);
const work = signal<null>(null);
const problem = signal<string | null>(null);

/** Decisions are kept and the plan is made anew from them, as the app does. */
async function decide(decision: NewDecision): Promise<void> {
  const before = painting.value?.decisions ?? [];
  const id = `d${before.length}`;
  const decisions = [...before, { ...decision, id, at: 0 } as Decision];
  painting.value = { decisions } as unknown as Painting;
  plan.value = await planned(decisions);
}
const studio = { painting, work, problem, decide } as unknown as Studio;

function Changed() {
  const inView = useStepInView(plan.value.steps, 3);
  const step = plan.value.steps[inView.index];
  if (!step) return null;
  return (
    <>
      <p data-testid="keys">{plan.value.steps.map(({ key }) => key).join(' ')}</p>
      <p data-testid="in-view">{step.key}</p>
      {plan.value.steps.map(({ key }, index) => (
        <button key={key} type="button" data-show={key} onClick={() => inView.show(index)}>
          {key}
        </button>
      ))}
      <ChangeStep studio={studio} plan={plan.value} reading={reading} step={step} />
    </>
  );
}

let screen: Shown;
beforeEach(async () => {
  await page.viewport(390, 844);
  plan.value = first;
  painting.value = { decisions: [] } as unknown as Painting;
  screen = shown(<Changed />);
  screen.host.querySelector('summary')?.click();
  return () => screen.leave();
});

const press = (name: string) => page.getByRole('button', { name, exact: true }).click();
const keys = () => page.getByTestId('keys');
const inView = () => page.getByTestId('in-view');
const said = () => page.getByTestId('consequence');
const show = (key: string): void =>
  screen.host.querySelector<HTMLElement>(`[data-show="${key}"]`)?.click();

test('a wash left out is listed, and put back', async () => {
  show('wash/sheet/3');
  await press('Leave out');
  await expect.element(keys()).not.toHaveTextContent('wash/sheet/3');
  await expect.element(page.getByText('Left out', { exact: true })).toBeVisible();
  await press('Put back: Darks');
  await expect.element(keys()).toHaveTextContent('wash/sheet/3');
  // The step she had in view is in view again.
  await expect.element(inView()).toHaveTextContent('wash/sheet/3');
});

test('darks moved earlier: what will happen is said at the step, undo takes it back', async () => {
  show('wash/sheet/3');
  await press('Earlier');
  await expect.element(inView()).toHaveTextContent('wash/sheet/3');
  await expect.element(keys()).toHaveTextContent(/wash\/sheet\/3 dry\/sheet\/3 wash\/sheet\/2/);
  // It tells on another step: that is said at once, and at that step.
  const elsewhere = page.getByTestId('elsewhere');
  await expect.element(elsewhere).toHaveTextContent(/Mind step \d+, .*darks that lie there/);
  show('wash/sheet/2');
  await expect.element(said()).toHaveTextContent('darks that lie there already');
  await press('Undo');
  await expect.element(keys()).toHaveTextContent(/wash\/sheet\/2 dry\/sheet\/2 wash\/sheet\/3/);
  await expect.element(said()).not.toBeInTheDocument();
});

test('in two goes and together again; the step stays in view', async () => {
  await press('Split in two');
  await expect.element(keys()).toHaveTextContent('wash/sheet/1/b');
  await expect.element(inView()).toHaveTextContent('wash/sheet/1');
  await press('Join with the next');
  await expect.element(keys()).not.toHaveTextContent('wash/sheet/1/b');
});

test('painted another way, mixed otherwise, one more glaze, all dropped', async () => {
  const loadOf = () => plan.value.mixes.find(({ id }) => id === 'sheet/1/1')?.load ?? 0;
  const before = loadOf();
  const stronger = page.getByRole('button', { name: 'Stronger', exact: true }).first();
  // Twice in a row: the second counts from the first.
  await stronger.click();
  await stronger.click();
  await expect.poll(loadOf).toBeCloseTo(before * 2, 6);
  const touchesOf = (paint: string) =>
    plan.value.mixes.filter(
      ({ parts }) => parts.at(-1)?.paint === paint && parts.at(-1)?.parts === 1,
    );
  const another = page.getByLabelText(/^A touch of another paint/).first();
  const added = another.element().querySelectorAll('option')[1]?.value ?? '';
  const { length: touchesBefore } = touchesOf(added);
  await another.selectOptions(added);
  await expect.poll(() => touchesOf(added).length).toBe(touchesBefore + 1);
  await press('dry brush');
  await expect
    .element(page.getByRole('button', { name: 'dry brush' }))
    .toHaveAttribute('aria-pressed', 'true');
  await press('One more glaze, colour 1');
  await expect.element(keys()).toHaveTextContent(/wash\/sheet\/1\/add-/);
  await press('Drop all changes');
  await expect.poll(() => plan.value.steps).toEqual(first.steps);
  await press('Undo');
  await expect.element(keys()).toHaveTextContent(/wash\/sheet\/1\/add-/);
});

test('by keys alone, and all that is pressed is at least 48 px', async () => {
  const leave = page.getByRole('button', { name: 'Leave out', exact: true });
  (leave.element() as HTMLElement).focus();
  await userEvent.keyboard('{Tab}{Tab}{Enter}');
  await expect.element(keys()).toHaveTextContent(/wash\/sheet\/2 dry\/sheet\/2 wash\/sheet\/1/);
  await expect.element(inView()).toHaveTextContent('wash/sheet/1');
  for (const one of screen.host.querySelectorAll('details button, summary')) {
    const { height, width } = one.getBoundingClientRect();
    expect(Math.min(height, width), one.textContent ?? '').toBeGreaterThanOrEqual(48);
  }
  expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(390);
});

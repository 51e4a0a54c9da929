import { signal } from '@preact/signals';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { page } from 'vitest/browser';
import type { Decision, NewDecision, Painting } from '../../../app/core/decisions/painting.ts';
import type { WashPlan } from '../../../app/core/plan/plan.ts';
import { sheetOf } from '../../../app/core/reference/sheet.ts';
import { PassagesFold } from '../../../app/screens/plan/passages-fold.tsx';
import { madePlan } from './made-plan.ts';
import { type Shown, shown } from './shown.ts';

const why = 'Background and subject together: most of the line between them is lost.';
const whole = await madePlan();
const sheet = sheetOf('quarter', 'across');

let decided: NewDecision[] = [];
let screen: Shown;
const painting = signal<Painting | null>(null);

function open(plan: WashPlan): void {
  const studio = {
    painting,
    work: signal(null),
    async decide(decision: NewDecision) {
      decided.push(decision);
      const made = { ...decision, id: String(decided.length), at: decided.length } as Decision;
      const before = painting.value;
      if (before) painting.value = { ...before, decisions: [...before.decisions, made] };
    },
  };
  screen = shown(<PassagesFold plan={plan} studio={studio} />);
}

beforeEach(async () => {
  await page.viewport(390, 844);
  decided = [];
  painting.value = {
    schema: 1,
    id: 'made',
    title: '',
    createdAt: 0,
    updatedAt: 0,
    reference: { photoId: 'p', crop: { centre: [0.5, 0.5], size: [1, 1], turn: 0 }, sheet },
    decisions: [],
    planIds: [],
    sessionIds: [],
  };
});
afterEach(() => screen.leave());

const button = (name: string) => page.getByRole('button', { name, exact: true });

test('why is read without opening it; her order is one touch, and so is the proposed one', async () => {
  open({ ...whole, passages: { painted: 'together', proposed: 'together', why } });
  await expect.element(page.getByText(why)).toBeVisible();
  await page.getByText(why).click();
  const proposed = button('As proposed (together)');
  await expect.element(proposed).toHaveAttribute('aria-pressed', 'true');
  await button('Background first').click();
  await expect.element(button('Background first')).toHaveAttribute('aria-pressed', 'true');
  await expect.element(proposed).toHaveAttribute('aria-pressed', 'false');
  await proposed.click();
  await expect.element(proposed).toHaveAttribute('aria-pressed', 'true');
  expect(decided).toEqual([
    { kind: 'passages', order: 'ground first' },
    { kind: 'passages', order: null },
  ]);
  for (const { height } of [...screen.host.querySelectorAll('button, summary')].map((each) =>
    each.getBoundingClientRect(),
  )) {
    expect(height).toBeGreaterThanOrEqual(48);
  }
});

test('without a subject nothing of it is shown', () => {
  open(whole);
  expect(screen.host.textContent).toBe('');
});

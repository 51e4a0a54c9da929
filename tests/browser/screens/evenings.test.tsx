import { signal } from '@preact/signals';
import { afterEach, expect, test } from 'vitest';
import { page } from 'vitest/browser';
import { usualAir } from '../../../app/core/drying/conditions.ts';
import { emptyBox } from '../../../app/core/paint/own-box.ts';
import { buildPlan } from '../../../app/core/plan/build-plan.ts';
import { eveningOf } from '../../../app/core/plan/evening/evening-times.ts';
import { words } from '../../../app/core/words/plan/words.ts';
import { PlanScreen } from '../../../app/screens/plan/plan-screen.tsx';
import { PlanPageScreen } from '../../../app/screens/plan-page/plan-page-screen.tsx';
import { madeReading, tableOf } from '../../support/plan/made-reading.ts';
import { madeStudy } from './made-study.ts';
import { type Shown, shown } from './shown.ts';

const box = ['py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna'];
const slots = tableOf([97, 80, 64, 48, 30], [[2, -18]]).flatMap((slot) =>
  ['ground', 'subject'].map((passage) => ({ ...slot, passage, share: slot.share / 2 })),
);
const plan = await buildPlan(madeReading(slots), { box, chosen: box, washes: 4 }, async () => {});
const study = await madeStudy();
const studio = { ...study.studio, plan: signal(plan) };
const never = () => Promise.reject(new Error('not asked for here'));
const calls = { mixNeighbours: never, mixingChart: never, softBlend: never, outline: never };
const second = plan.steps.find((step) => eveningOf(step) === 2);
let screen: Shown;

afterEach(() => screen.leave());

test('the printed page has a heading over the second evening, and says what becomes of the sheet', async () => {
  screen = shown(<PlanPageScreen studio={studio} calls={calls} paintingId="made" />);
  const sheet = page.getByTestId('plan-sheet');
  await expect.element(sheet).toHaveTextContent(/First evening about .* Second evening about/);
  const items = [...sheet.element().querySelectorAll('ol > li')].map((li) => li.textContent ?? '');
  const at = items.findIndex((text) => text.startsWith('Second evening'));
  expect(items[at]).toContain('leave the sheet on its board');
  expect(items[at + 1]).toContain(`${second?.n}. ${words(second?.title)}`);
  expect(items.filter((text) => text.startsWith('Second evening'))).toHaveLength(1);
});

test('the plan says of every step which evening it belongs to', async () => {
  await page.viewport(390, 844);
  const ownAir = { air: signal(usualAir), set: async () => {} };
  screen = shown(
    <PlanScreen
      studio={studio}
      calls={calls}
      ownAir={ownAir}
      ownBox={{ box: signal(emptyBox) }}
      paintingId="made"
    />,
  );
  const label = () => screen.host.querySelector('article')?.previousElementSibling?.textContent;
  await expect.poll(label).toBe('First evening');
  await page.getByRole('button', { name: new RegExp(`^Second evening ?${second?.n}\\.`) }).click();
  await expect.poll(label).toBe('Second evening');
  await expect
    .element(page.getByText('Second evening: the sheet must be bone dry'))
    .toBeInTheDocument();
});

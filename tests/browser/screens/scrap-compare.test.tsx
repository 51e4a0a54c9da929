import { afterEach, beforeEach, expect, test } from 'vitest';
import { page } from 'vitest/browser';
import { comparedPuddles } from '../../../app/core/session/scrap-verdicts.ts';
import { ScrapCompare } from '../../../app/screens/easel/scrap-compare.tsx';
import { ReachList } from '../../../app/screens/plan/plan-screen.tsx';
import type { Easel } from '../../../app/state/session/easel.ts';
import { amountsFor, PuddleList } from '../../../app/ui/mixes/puddle-list.tsx';
import { LayOutList } from '../../../app/ui/mixes/step-parts.tsx';
import { type MadeEasel, madeEasel } from './made-easel.ts';
import { type Shown, shown } from './shown.ts';

let made: MadeEasel;
let screen: Shown | null = null;

function Scraps({ easel }: { easel: Easel }) {
  const { value: desk } = easel.desk;
  const { value: step } = easel.step;
  return desk && step ? <ScrapCompare easel={easel} desk={desk} step={step} /> : null;
}

const show = (): void => {
  screen?.leave();
  screen = shown(<Scraps easel={made.easel} />);
};
const button = (name: string | RegExp) => page.getByRole('button', { name });
const place = () => page.getByTestId('scrap');
const scraps = () => comparedPuddles(made.easel.log.value);

beforeEach(async () => {
  await page.viewport(390, 844);
  made = await madeEasel();
  made.goTo('puddles');
  show();
});
afterEach(() => {
  screen?.leave();
  screen = null;
  made.easel.leave();
  made.store.close();
});

test('weaker: told at once what to do, and the puddle stays; right: the next one comes', async () => {
  await expect.element(button(/^Puddle 1 of 2/)).toBeVisible();
  await button('Weaker').click();
  await expect.element(button('Weaker')).toHaveAttribute('aria-pressed', 'true');
  await expect.element(page.getByRole('status')).toHaveTextContent('More paint');
  await expect.element(button(/^Puddle 1 of 2/)).toBeVisible();
  made.wait(10);
  await button('Right').click();
  await expect.element(button(/^Puddle 2 of 2/)).toBeVisible();
  await expect.element(button('Right')).toHaveAttribute('aria-pressed', 'false');
  expect(scraps().map(({ tries }) => tries)).toEqual([['weaker', 'right']]);
});

test('the same verdict pressed again withdraws it; a verdict can be taken back like any tap', async () => {
  await button('Stronger').click();
  made.wait(1);
  await button('Stronger').click();
  await expect.element(button('Stronger')).toHaveAttribute('aria-pressed', 'false');
  expect(scraps()).toEqual([]);
  made.wait(1);
  await button('Weaker').click();
  expect(made.easel.lastAct.value?.words).toBe('Scrap compared');
  made.easel.takeBack();
  await expect.element(button('Weaker')).toHaveAttribute('aria-pressed', 'false');
});

test('every puddle is in reach; buttons as large as a wet finger needs', async () => {
  await button(/^Puddle 1 of 2/).click();
  await expect.element(button(/^Puddle 2 of 2/)).toBeVisible();
  await button(/^Puddle 2 of 2/).click();
  await expect.element(button(/^Puddle 1 of 2/)).toBeVisible();
  for (const each of place().element().querySelectorAll('button')) {
    const { width, height } = each.getBoundingClientRect();
    expect(Math.min(width, height)).toBeGreaterThanOrEqual(64);
  }
});

test('painted again: it says what the puddle did last time', async () => {
  await button('Weaker').click();
  made.wait(10);
  await button('Right').click();
  await made.paintAgain();
  made.goTo('puddles');
  show();
  await expect
    .element(page.getByRole('status'))
    .toHaveTextContent('Last time it came out weaker: take more paint.');
});

test('before she starts: what to lay out, how much to mix, and what can not be reached', async () => {
  const { desk, step } = made.easel;
  const plan = desk.value?.plan;
  if (!plan || !step.value) throw new Error('no plan');
  const mixes = plan.mixes.filter(({ id }) => step.value?.mixes.includes(id));
  const sheet = { widthMm: 381, heightMm: 279 };
  const warnings = [
    { code: 'dark-out-of-reach', text: 'The darks.' },
    { code: 'whites-too-small', text: 'The whites.' },
  ] as const;
  screen?.again(
    <div>
      <ReachList plan={{ warnings }} />
      <LayOutList plan={plan} />
      <PuddleList
        plan={plan}
        mixes={mixes}
        familyName={String}
        sheet={amountsFor(step.value, { sheet })}
      />
    </div>,
  );
  await expect.element(page.getByText('The darks.').first()).toBeVisible();
  expect(page.getByText('The whites.').query()?.checkVisibility()).toBe(false);
  await page.getByText("What can't be reached (2)").click();
  await expect.element(page.getByText('The whites.')).toBeVisible();
  await expect.element(page.getByTestId('lay-out')).toHaveTextContent(/Paints.*\(P/);
  await expect.element(page.getByTestId('puddles')).toHaveTextContent(/ml: .* of water, .*rough/);
  screen?.again(<ReachList plan={{ warnings: [] }} />);
  await expect.poll(() => screen?.host.textContent).toBe('');
});

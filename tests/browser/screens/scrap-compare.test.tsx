import { afterEach, beforeEach, expect, test } from 'vitest';
import { page } from 'vitest/browser';
import { lookAtScrap } from '../../../app/core/paint/paint-at-fault.ts';
import { strengthCorrections } from '../../../app/core/paint/strength-corrections.ts';
import { comparedPuddles } from '../../../app/core/session/scrap-verdicts.ts';
import { StrengthList } from '../../../app/screens/box/strength-note.tsx';
import { ScrapCompare } from '../../../app/screens/easel/scrap-compare.tsx';
import { ReachList } from '../../../app/screens/plan/plan-screen.tsx';
import { createOwnBox, type OwnBoxState } from '../../../app/state/paints/own-box.ts';
import { mixWordsIn } from '../../../app/ui/mixes/mix-words-in.ts';
import { amountsFor, PuddleList } from '../../../app/ui/mixes/puddle-list.tsx';
import { LayOutList } from '../../../app/ui/mixes/step-parts.tsx';
import { type MadeEasel, madeEasel } from './made-easel.ts';
import { type Shown, shown } from './shown.ts';

let made: MadeEasel;
let ownBox: OwnBoxState;
let screen: Shown | null = null;

type ScrapCalls = Parameters<typeof ScrapCompare>[0]['calls'];
const calls: ScrapCalls = { lookAtScrap: async (_signal, ...asked) => lookAtScrap(...asked) };

function Scraps() {
  const { easel } = made;
  const { value: desk } = easel.desk;
  const { value: step } = easel.step;
  return desk && step ? <ScrapCompare {...{ easel, ownBox, calls, desk, step }} /> : null;
}

const show = (): void => {
  screen?.leave();
  screen = shown(<Scraps />);
};
/** Her box as it is found after a reload. */
const openBox = (): void => {
  ownBox = createOwnBox(made.store, {
    paintBox: async () => [],
    renewBox: async () => Promise.reject(new Error('no former box')),
  });
};
const button = (name: string | RegExp) => page.getByRole('button', { name });
const place = () => page.getByTestId('scrap');
const said = () =>
  comparedPuddles(made.easel.log.value).map(({ tries }) =>
    tries.map(({ depth, hue }) => hue ?? depth),
  );
const advice = () => place().getByRole('status');

beforeEach(async () => {
  await page.viewport(390, 844);
  made = await madeEasel();
  made.goTo('puddles');
  openBox();
  show();
});
afterEach(() => {
  screen?.leave();
  screen = null;
  made.easel.leave();
  made.store.close();
});

test('too pale: told at once what to do, and the puddle stays; right: the next one comes', async () => {
  await expect.element(button(/^Puddle 1 of 2/)).toBeVisible();
  await button('Too pale').click();
  await expect.element(button('Too pale')).toHaveAttribute('aria-pressed', 'true');
  await expect.element(advice()).toHaveTextContent('More paint');
  await expect.element(button(/^Puddle 1 of 2/)).toBeVisible();
  made.wait(10);
  await button('Right').click();
  await expect.element(button(/^Puddle 2 of 2/)).toBeVisible();
  await expect.element(button('Right')).toHaveAttribute('aria-pressed', 'false');
  expect(said()).toEqual([['weaker', 'right']]);
});

test('the same verdict pressed again withdraws it; a verdict can be taken back like any tap', async () => {
  await button('Too strong').click();
  made.wait(1);
  await button('Too strong').click();
  await expect.element(button('Too strong')).toHaveAttribute('aria-pressed', 'false');
  expect(said()).toEqual([]);
  made.wait(1);
  await button('Too pale').click();
  expect(made.easel.lastAct.value?.act).toBe('scrap');
  made.easel.takeBack();
  await expect.element(button('Too pale')).toHaveAttribute('aria-pressed', 'false');
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
  await button('Too pale').click();
  made.wait(10);
  await button('Right').click();
  await made.paintAgain();
  made.goTo('puddles');
  show();
  await expect
    .element(advice())
    .toHaveTextContent('Last time it came out too pale: take more paint.');
});

/** A puddle of two paints or more, shown; its first paint and the word that finds too much of it. */
async function showMix() {
  const { desk, record } = made.easel;
  const optics = desk.value?.plan.optics ?? [];
  for (const mix of record.value?.mixes ?? []) {
    if (mix.wash !== 1 || mix.parts.length < 2) continue;
    for (const hue of ['blue', 'yellow', 'red'] as const) {
      const { fault } = lookAtScrap(optics, mix, { depth: null, hue }, []);
      const paint = optics.find(({ id }) => id === fault?.paint);
      if (!fault || !paint) continue;
      const words = desk.value ? mixWordsIn(desk.value.plan)(mix.parts) : '';
      while (!place().element().textContent?.includes(`${words}:`)) await button(/^Puddle/).click();
      return { hue, paint, seems: fault.seems };
    }
  }
  throw new Error('no puddle of two paints');
}

test('too much of a colour: which paint, what plans do from now on, kept with her box and to be reset', async () => {
  const { hue, paint } = await showMix();
  await button(`Too ${hue}`).click();
  await expect.element(button(`Too ${hue}`)).toHaveAttribute('aria-pressed', 'true');
  await expect
    .element(advice())
    .toHaveTextContent(
      `Your ${paint.name} seems stronger than reckoned: from now on plans use less of it (by a fifth).`,
    );
  await expect.element(advice()).toHaveTextContent(/Add a little more .*, then brush it again\./);
  await made.store.settled();
  openBox();
  await ownBox.ready;
  expect(strengthCorrections(ownBox.box.value.strengthLessons)).toEqual([
    { paint: paint.id, factor: 1.25 },
  ]);
  screen?.leave();
  screen = shown(<StrengthList ownBox={ownBox} />);
  await expect.element(page.getByText('1 scrap, the last on', { exact: false })).toBeVisible();
  await button(`Reset the strength of ${paint.name}`).click();
  await expect.poll(() => screen?.host.textContent).toBe('');
  await made.store.settled();
  openBox();
  await ownBox.ready;
  expect(strengthCorrections(ownBox.box.value.strengthLessons)).toEqual([]);
  show(); // the scrap still stands in the log: what was reset is not learned from it again
  await showMix();
  await expect.element(advice()).toHaveTextContent(`Your ${paint.name} was reset`);
});

test('told by mistake: taken back, it corrects no paint; not learned before the page went, it is made up for', async () => {
  const { hue } = await showMix();
  await button(`Too ${hue}`).click();
  const corrections = () => strengthCorrections(ownBox.box.value.strengthLessons);
  await expect.poll(corrections).toHaveLength(1);
  made.easel.takeBack();
  await expect.poll(corrections).toEqual([]);
  screen?.leave();
  screen = null;
  const { parts, load } = made.easel.record.value?.mixes.find((mix) => mix.parts.length > 1) ?? {};
  if (!parts || !load) throw new Error('no mix');
  made.easel.tell({ kind: 'scrap', parts, load, verdict: null, hue });
  expect(corrections()).toEqual([]);
  show();
  await expect.poll(corrections).toHaveLength(1);
});

test('depth is the water for a mix, and right clears what was too much', async () => {
  const { hue } = await showMix();
  await button('Too strong').click();
  await expect.element(advice()).toHaveTextContent(/^More water, then brush it again\.$/);
  made.wait(0.1);
  await button(`Too ${hue}`).click();
  await expect.element(button('Too strong')).toHaveAttribute('aria-pressed', 'true');
  made.wait(0.1);
  expect(said()).toEqual([[hue]]);
  await button('Right').click();
  await expect.poll(said).toEqual([['right']]);
  await expect.poll(() => ownBox.box.value.strengthLessons).toEqual([]);
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
  await expect
    .element(page.getByTestId('puddles'))
    .toHaveTextContent(/ml: .* of water, .*by the swatch/);
  screen?.again(<ReachList plan={{ warnings: [] }} />);
  await expect.poll(() => screen?.host.textContent).toBe('');
});

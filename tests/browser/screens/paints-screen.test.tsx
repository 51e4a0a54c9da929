import { signal } from '@preact/signals';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { page } from 'vitest/browser';
import type { Decision, NewDecision } from '../../../app/core/decisions/painting.ts';
import { planWishes } from '../../../app/core/decisions/wishes.ts';
import { emptyBox } from '../../../app/core/paint/own-box.ts';
import { paintBox, paintCard } from '../../../app/core/paint/paint-box.ts';
import { buildPlan } from '../../../app/core/plan/build-plan.ts';
import { paletteOffers } from '../../../app/core/plan/offer-palettes.ts';
import type { WashPlan } from '../../../app/core/plan/plan.ts';
import { createPlanMemory } from '../../../app/core/plan/plan-memory.ts';
import { PaintsScreen } from '../../../app/screens/paints/paints-screen.tsx';
import type { PaletteCalls } from '../../../app/state/painting/screen-calls.ts';
import type { Studio } from '../../../app/state/painting/studio.ts';
import type { OwnBoxState } from '../../../app/state/paints/own-box.ts';
import { told } from '../../support/plan/told.ts';
import { madeStudy } from './made-study.ts';
import { type Shown, shown } from './shown.ts';

const owned = [
  'py35-cadmium-yellow',
  'pr108-cadmium-red',
  'pb27-prussian-blue',
  'pb29-ultramarine-blue',
  'pbr7-burnt-sienna',
];
const nothing = async (): Promise<void> => {};
const ownBox: OwnBoxState = {
  box: signal({ ...emptyBox, owned }),
  cards: signal(paintBox.map(paintCard)),
  problem: signal(null),
  ready: Promise.resolve(),
  open: nothing,
  change: nothing,

  readAgain: async () => {},
};
const study = await madeStudy();
const reading = study.seen.value?.reading;
if (!reading) throw new Error('nothing read');

const memory = createPlanMemory();
const planFor = (decisions: readonly Decision[]): Promise<WashPlan> =>
  buildPlan(reading, planWishes(decisions, ownBox.box.value), nothing, memory);
const firstPlan = await planFor([]);

let decided: NewDecision[] = [];
let screen: Shown;
/** Lets a search that is held back go on. */
let letGo: () => void;
let searches = 0;

function open(held: boolean): void {
  const painting = signal(study.studio.painting.value);
  const plan = signal<WashPlan | null>(firstPlan);
  const studio: Studio = {
    ...study.studio,
    painting,
    plan,
    async decide(decision) {
      decided.push(decision);
      const made = { ...decision, id: String(decided.length), at: decided.length } as Decision;
      const before = painting.value;
      if (!before) return;
      painting.value = { ...before, decisions: [...before.decisions, made] };
      plan.value = await planFor(painting.value.decisions);
    },
  };
  const holding = held
    ? new Promise<void>((resolve) => {
        letGo = resolve;
      })
    : Promise.resolve();
  const calls: PaletteCalls = {
    async palettes(leaving, read, wishes, onProgress) {
      searches += 1;
      onProgress?.(0.5, 'paints');
      await holding;
      return paletteOffers(read, wishes, async () => leaving.throwIfAborted(), memory);
    },
  };
  screen = shown(<PaintsScreen studio={studio} ownBox={ownBox} calls={calls} paintingId="made" />);
}

beforeEach(async () => {
  await page.viewport(390, 844);
  decided = [];
  searches = 0;
});
afterEach(() => screen.leave());

const button = (name: string | RegExp) => page.getByRole('button', { name });
const region = (name: string) => page.getByRole('region', { name });
const cardsOf = () => [...screen.host.querySelectorAll('details li button')];
/** Opens a fold by its heading. */
const unfold = (name: string) => page.getByRole('heading', { name }).click();
const textOf = (name: string): string =>
  screen.host.querySelector(`[aria-label="${name}"]`)?.textContent ?? '';

test('each paint of the plan says its job in the picture; a touch says what is lost without it', async () => {
  open(false);
  const chosen = region('Chosen paints');
  const { why = '?', name = '?' } = told(firstPlan).palette[0] ?? {};
  await expect.element(chosen).toHaveTextContent(new RegExp(why, 'i'));
  await expect.element(chosen).toHaveTextContent('Made from your own 5 paints.');
  await expect.element(chosen.getByText('Leave out').first()).not.toBeVisible();
  await chosen
    .getByRole('button', { name: new RegExp(name, 'i') })
    .first()
    .click();
  await expect.element(button(`Leave out ${name}`)).toBeVisible();
  await expect
    .poll(() => textOf('Chosen paints').match(/Without it/g)?.length)
    .toBe(firstPlan.palette.length);
  // Only what she owns is in the box below, and nothing twice.
  await unfold('The rest of your box');
  const left = owned.length - firstPlan.palette.length;
  await expect.poll(() => document.querySelectorAll('[aria-label^="Use it"]').length).toBe(left);
  await expect.element(page.getByText('107 more paints in the list')).toBeVisible();
});

test('a classic start is taken by a tap, said to lack what she has not, and given up again', async () => {
  open(false);
  await unfold('Start from a classic');
  const card = button(/Three primaries/);
  await expect.element(card).toHaveTextContent('Not in your box: a cool yellow (PY3), a cool red');
  await button(/^A warm and a cool/).click();
  const pair = ['pbr7-burnt-sienna', 'pb29-ultramarine-blue'];
  expect(decided).toEqual([{ kind: 'palette', n: 5, must: [], exclude: [], chosen: pair }]);
  await expect.element(region('Chosen paints')).toHaveTextContent('You chose these');
  await expect.element(region('Chosen paints')).toHaveTextContent(/ultramarine blue/i);
  await expect.poll(() => document.activeElement?.textContent).toBe('Squeeze out these');
  await unfold('Other choices');
  await expect.element(button(/What the app would choose/)).toBeEnabled();
  await button('Let the app choose again').click();
  expect(decided.at(-1)).toEqual({ kind: 'palette', n: 5, must: [], exclude: [] });
});

test('another palette is taken whole', async () => {
  open(false);
  await button('One paint fewer').click();
  expect(decided).toEqual([{ kind: 'palette', n: 4, must: [], exclude: [] }]);
  await unfold('Start from a classic');
  await button(/^A warm and a cool/).click();
  await unfold('Other choices');
  await expect.element(button(/What the app would choose/)).toBeEnabled();
  await button(/What the app would choose/).click();
  const last = decided.at(-1);
  const ids = last?.kind === 'palette' ? (last.chosen ?? []) : [];
  expect(ids.length).toBeGreaterThan(1);
  for (const id of ids) expect(owned).toContain(id);
});

test('a paint is asked for, left out, and allowed again', async () => {
  open(false);
  const first = firstPlan.palette[0];
  const other = ownBox.cards.value.find(
    ({ id }) => owned.includes(id) && !firstPlan.palette.some((entry) => entry.id === id),
  );
  if (!first || !other) throw new Error('all in the palette');
  await unfold('The rest of your box');
  await button(`Use it: ${other.name}`).click();
  expect(decided.at(-1)).toMatchObject({ must: [other.id], exclude: [] });
  await button(new RegExp(first.name, 'i')).first().click();
  await button(`Leave out ${first.name}`).click();
  expect(decided.at(-1)).toMatchObject({ must: [other.id], exclude: [first.id] });
  await button(`Allow again: ${first.name}`).click();
  expect(decided.at(-1)).toMatchObject({ must: [other.id], exclude: [] });
});

test('the search shows how far it is, can be stopped and taken up again', async () => {
  open(true);
  await expect.element(page.getByText('Looking for other palettes …')).toBeVisible();
  await expect.element(page.getByRole('progressbar')).toHaveAttribute('value', '50');
  await button('Stop').click();
  await expect.element(button('Look for other palettes')).toBeVisible();
  await expect.poll(() => screen.host.querySelector('progress')).toBe(null);
  letGo();
  await button('Look for other palettes').click();
  await expect.poll(() => searches).toBe(2);
  await expect.poll(() => textOf('Chosen paints').includes('Without it')).toBe(true);
  await expect.poll(() => screen.host.querySelector('progress')).toBe(null);
});

test('everything to press is at least 48 px high, at 200 % text too, and nothing runs over', async () => {
  open(false);
  await expect.poll(() => cardsOf().length).toBeGreaterThan(4);
  for (const size of ['100%', '200%']) {
    document.documentElement.style.fontSize = size;
    const pressed = [...screen.host.querySelectorAll('main button, main a')].filter((one) =>
      one.checkVisibility(),
    );
    for (const one of pressed) {
      expect(one.getBoundingClientRect().height, one.textContent ?? '').toBeGreaterThanOrEqual(48);
      expect(one.getBoundingClientRect().right).toBeLessThanOrEqual(390);
    }
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(390);
  }
  document.documentElement.style.fontSize = '';
});

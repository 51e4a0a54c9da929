import { signal } from '@preact/signals';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import type { Decision, NewDecision, Painting } from '../../../app/core/decisions/painting.ts';
import { planWishes } from '../../../app/core/decisions/wishes.ts';
import { type KeptAir, usualAir } from '../../../app/core/drying/conditions.ts';
import { emptyBox } from '../../../app/core/paint/own-box.ts';
import { buildPlan } from '../../../app/core/plan/build-plan.ts';
import type { WashPlan } from '../../../app/core/plan/plan.ts';
import { createPlanMemory } from '../../../app/core/plan/plan-memory.ts';
import type { Reference } from '../../../app/core/reference/reference.ts';
import { words } from '../../../app/core/words/plan/words.ts';
import { PlanScreen } from '../../../app/screens/plan/plan-screen.tsx';
import type { Studio } from '../../../app/state/painting/studio.ts';
import { madeStudy } from './made-study.ts';
import { shownGreens } from './picture-pixels.ts';
import { type Shown, shown } from './shown.ts';

const box = ['py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna'];
const memory = createPlanMemory();
const study = await madeStudy();
const seen = study.seen.value;
if (!seen || !study.studio.painting.value) throw new Error('nothing read');
const first: Painting = study.studio.painting.value;

const planFor = (of: Painting, { weather, paper }: KeptAir): Promise<WashPlan> =>
  buildPlan(
    seen.reading,
    { ...planWishes(of.decisions, emptyBox, { weather, paper }), box, chosen: box },
    async () => {},
    memory,
  );

let decided: NewDecision[] = [];
let references: Reference[] = [];
let screen: Shown;
const air = signal(usualAir);
const plan = signal<WashPlan | null>(null);

async function open(): Promise<void> {
  const painting = signal<Painting | null>(first);
  const refresh = async (): Promise<void> => {
    if (painting.value) plan.value = await planFor(painting.value, air.value);
  };
  const studio: Studio = {
    ...study.studio,
    painting,
    plan,
    again: () => void refresh(),
    async decide(decision) {
      decided.push(decision);
      const made = { ...decision, id: String(decided.length), at: decided.length } as Decision;
      const before = painting.value;
      if (before) painting.value = { ...before, decisions: [...before.decisions, made] };
      await refresh();
    },
    async setReference(sheet, crop) {
      references.push({ photoId: 'p', sheet, crop });
    },
  };
  const ownAir = {
    air,
    set: async (now: Pick<KeptAir, 'weather' | 'paper'>) => {
      air.value = { schema: 1, ...now };
    },
  };
  const never = () => Promise.reject(new Error('not asked for here'));
  const calls = { mixNeighbours: never, mixingChart: never, softBlend: never, outline: never };
  await refresh();
  screen = shown(
    <PlanScreen
      studio={studio}
      calls={calls}
      ownAir={ownAir}
      ownBox={{ box: signal(emptyBox) }}
      paintingId="made"
    />,
  );
}

beforeEach(async () => {
  await page.viewport(390, 844);
  decided = [];
  references = [];
  air.value = usualAir;
  await open();
});
afterEach(() => screen.leave());

const button = (name: string | RegExp) => page.getByRole('button', { name });
const summary = () => page.getByText('Time and paper');
const fold = () =>
  [...screen.host.querySelectorAll('details')].find((each) =>
    each.textContent?.startsWith('Time and paper'),
  );
const panel = () => fold()?.textContent ?? '';
const total = () => fold()?.querySelector('summary')?.textContent ?? '';

/** Types a time of her own. */
async function inMinutes(minutes: number): Promise<void> {
  await page.getByLabelText('Or minutes').fill(String(minutes));
  await userEvent.keyboard('{Tab}');
}

test('the time with drying is always told, and what a short time costs', async () => {
  expect(total()).toMatch(/About (\d+ h ?)?(\d+ min)?, (\d+ h ?)?(\d+ min)? of it waiting\./);
  await summary().click();
  await button('45 minutes').click();
  expect(decided).toEqual([{ kind: 'evening', minutes: 45 }]);
  await expect.poll(panel).toContain('To come near 45 min on this sheet it gives up:Less water');
  await inMinutes(20);
  await expect.poll(total).toContain('Longer than your 20 min.');
  // One figure for how long it takes, wherever it is told.
  const likely = /About ([^,]+),/.exec(total())?.[1];
  expect(panel()).toContain(`Cut down as far as it goes, it still takes about ${likely}.`);
  await button('No hurry').click();
  await expect.poll(panel).not.toContain('gives up');
});

test('a smaller sheet of the same shape is taken by one touch, never by itself', async () => {
  await summary().click();
  await inMinutes(20);
  await expect.poll(panel).toContain('A smaller sheet of the same shape');
  expect(references).toEqual([]);
  await button(/^Half the sheet, 269 × 197 mm \(10.6 × 7.8 in\): about/).click();
  expect(references).toEqual([
    {
      photoId: 'p',
      sheet: { format: 'own', widthMm: 269, heightMm: 197 },
      crop: first.reference.crop,
    },
  ]);
});

test('her own minutes are heeded, and what is no time is refused in a sentence', async () => {
  await summary().click();
  const field = page.getByLabelText('Or minutes');
  await field.fill('12');
  await userEvent.keyboard('{Tab}');
  await expect.element(page.getByRole('alert')).toHaveTextContent('no time for a wash');
  expect(decided).toEqual([]);
  await field.fill('90');
  await userEvent.keyboard('{Tab}');
  await expect.poll(() => decided).toEqual([{ kind: 'evening', minutes: 90 }]);
});

test('a hair dryer, the paper and the number of washes change the plan', async () => {
  await summary().click();
  const before = total();
  await button('Hair dryer').click();
  await expect.poll(total).not.toBe(before);
  expect(air.value.weather.hairDryer).toBe(true);
  await button('One').click();
  await expect.poll(panel).toContain('One wash, as you asked.');
  expect(decided).toEqual([{ kind: 'washes', count: 1 }]);
  await button('Cellulose').click();
  await button('190 g/m²').click();
  await expect.poll(() => air.value.paper).toEqual({ gsm: 190, fibre: 'cellulose' });
  await expect.poll(() => button('Three').elements().length).toBe(0);
  await button('As proposed').click();
  expect(decided.at(-1)).toEqual({ kind: 'washes', count: null });
});

test('the strip leads to every step, by keys too; what changes nothing has no picture', async () => {
  const steps = plan.value?.steps ?? [];
  const stage = (n: number) =>
    page.getByRole('button', { name: `${n}. ${words(steps[n - 1]?.title)}`, exact: true });
  await stage(steps.length).click();
  await expect
    .element(page.getByRole('heading', { name: `${steps.length}. Last look` }))
    .toBeVisible();
  await expect.element(stage(steps.length)).toHaveAttribute('aria-current', 'step');
  (stage(1).element() as HTMLElement).focus();
  await userEvent.keyboard('{Enter}');
  await expect.element(page.getByRole('heading', { name: '1. Prepare' })).toBeVisible();
  const pictured = steps.filter((_, n) =>
    stage(n + 1)
      .element()
      .querySelector('canvas'),
  );
  expect(pictured.length).toBeGreaterThan(0);
  expect(new Set(pictured.map(({ kind }) => kind)).has('dry')).toBe(false);
  expect(pictured.length).toBeLessThan(steps.length / 2 + 1);
});

test('wet now is darker than dry, and what does not change is dimmed to the wall', async () => {
  const turnTo = async (view: string): Promise<void> => {
    await button(view).click();
    await expect.element(button(view)).toHaveAttribute('aria-pressed', 'true');
  };
  // A picture may be painted a frame after its name stands.
  const grey = (x: number) => (): number => shownGreens([x])[0] ?? Number.NaN;
  await turnTo('After this step');
  await expect.poll(grey(0.95)).toBeGreaterThan(220);
  const dry = grey(0.5)();
  await turnTo('Wet now');
  await expect.poll(grey(0.5)).toBeLessThan(dry);
  await turnTo('What changes');
  await expect.poll(grey(0.95)).toBeLessThan(170);
  await expect.poll(() => screen.host.textContent).toMatch(/% of the sheet gets darker/);
});

test('where nothing is done to the sheet it is shown beside the photo alone, and all again at the next wash', async () => {
  const choices = () =>
    page
      .getByRole('group', { name: 'What the picture shows' })
      .getByRole('button')
      .elements()
      .map((each) => each.textContent);
  await button('Wet now').click();
  await page.getByRole('button', { name: '1. Prepare', exact: true }).click();
  await expect.poll(choices).toEqual(['After this step', 'Photo']);
  await expect.element(button('After this step')).toHaveAttribute('aria-pressed', 'true');
  const wash = plan.value?.steps.find(({ kind }) => kind === 'wash');
  await page
    .getByRole('button', { name: `${wash?.n}. ${words(wash?.title)}`, exact: true })
    .click();
  await expect.poll(() => choices().length).toBe(5);
  await expect.element(button('Wet now')).toHaveAttribute('aria-pressed', 'true');
});

test('all to press in it is at least 48 px high, at 200 % text too, and nothing runs over', async () => {
  await summary().click();
  await inMinutes(20);
  await expect.poll(panel).toContain('A smaller sheet');
  for (const size of ['100%', '200%']) {
    document.documentElement.style.fontSize = size;
    const pressed = [
      ...screen.host.querySelectorAll('details button, details input, summary'),
    ].filter((one) => one.checkVisibility());
    expect(pressed.length).toBeGreaterThan(15);
    for (const one of pressed) {
      const { height, right } = one.getBoundingClientRect();
      expect(height, one.textContent ?? '').toBeGreaterThanOrEqual(48);
      expect(right, one.textContent ?? '').toBeLessThanOrEqual(390);
    }
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(390);
  }
  document.documentElement.style.fontSize = '';
});

import { signal } from '@preact/signals';
import { beforeEach, expect, test } from 'vitest';
import { page } from 'vitest/browser';
import type { Decision, NewDecision } from '../../../app/core/decisions/painting.ts';
import { emptyBox } from '../../../app/core/paint/own-box.ts';
import { paintBox, paintCard } from '../../../app/core/paint/paint-box.ts';
import { HuesScreen, previewColours } from '../../../app/screens/hues/hues-screen.tsx';
import type { OwnBoxState } from '../../../app/state/paints/own-box.ts';
import { madeStudy } from './made-study.ts';
import { type Shown, shown } from './shown.ts';

const cards = paintBox.map(paintCard);
const nothing = async (): Promise<void> => {};
const ownBox: OwnBoxState = {
  box: signal({
    ...emptyBox,
    owned: ['pb29-ultramarine-blue', 'pbr7-burnt-sienna', 'hue-lemon-yellow'],
  }),
  cards: signal(cards),
  problem: signal(null),
  ready: Promise.resolve(),
  open: nothing,
  change: nothing,

  readAgain: async () => {},
};
const study = await madeStudy();
let decided: NewDecision[] = [];
let screen: Shown;

beforeEach(() => {
  decided = [];
  const painting = signal(study.studio.painting.value);
  // Kept, and nothing worked out until the plan is opened.
  const note = async (decision: NewDecision): Promise<void> => {
    decided.push(decision);
    const made = { ...decision, id: String(decided.length), at: decided.length } as Decision;
    const before = painting.value;
    if (before) painting.value = { ...before, decisions: [...before.decisions, made] };
  };
  screen = shown(
    <HuesScreen studio={{ ...study.studio, painting, note }} ownBox={ownBox} paintingId="made" />,
  );
  return () => screen.leave();
});

const button = (name: string | RegExp) => page.getByRole('button', { name });

test('one paint: only hers are offered, its reach is told, and it is decided', async () => {
  await button('One paint').click();
  await expect
    .poll(() => screen.host.querySelectorAll('[aria-label="Your paints"] button').length)
    .toBe(3);
  await button('Lemon yellow hue').click();
  expect(decided).toEqual([{ kind: 'colours', wish: { mode: 'one', paint: 'hue-lemon-yellow' } }]);
  await expect
    .element(page.getByText(/^Lemon yellow hue gets no darker than value \d\.\d; its darkest/i))
    .toBeVisible();
  await button('As the photo').click();
  expect(decided.at(-1)).toEqual({ kind: 'colours', wish: { mode: 'photo' } });
});

test('my colours: a hue for one colour of the picture, the others as the photo', async () => {
  await button('My colours').click();
  await button(/burnt sienna/i)
    .first()
    .click();
  const family = study.seen.value?.reading.families[0];
  expect(decided.at(-1)).toEqual({
    kind: 'colours',
    wish: {
      mode: 'own',
      hues: [{ family: [family?.lab[1], family?.lab[2]], paint: 'pbr7-burnt-sienna' }],
    },
  });
  await expect.element(button(/in burnt sienna/i)).toBeVisible();
  await button('As the photo has it').click();
  expect(decided.at(-1)).toEqual({ kind: 'colours', wish: { mode: 'photo' } });
});

test('the preview keeps values and whites, whatever the hues', () => {
  const reading = study.seen.value?.reading;
  if (!reading) throw new Error('nothing read');
  const family = reading.slots.find(({ reserve }) => !reserve)?.family;
  const lab = reading.families.find(({ id }) => id === family)?.lab ?? [0, 0, 0];
  const wish = {
    mode: 'own',
    hues: [{ family: [lab[1], lab[2]], paint: 'pbr7-burnt-sienna' }],
  } as const;
  const colours = previewColours(reading, wish, cards);
  let changed = 0;
  for (const [i, { target, reserve }] of reading.slots.entries()) {
    if (reserve) expect(colours[i]).toEqual([reading.range.paper, 0, 0]);
    else expect(colours[i]?.[0]).toBe(target[0]);
    if (!reserve && colours[i]?.[1] !== target[1]) changed++;
  }
  expect(changed).toBeGreaterThan(0);
  // One pale paint opens the picture only as far as it goes.
  const yellow = previewColours(reading, { mode: 'one', paint: 'hue-lemon-yellow' }, cards);
  const ladder = cards.find(({ id }) => id === 'hue-lemon-yellow')?.ladder ?? [];
  const darkest = Math.min(...ladder.map(([lightness]) => lightness));
  for (const [lightness] of yellow) expect(lightness).toBeGreaterThanOrEqual(darkest - 0.001);
});

test('everything to press is at least 48 px high', async () => {
  await button('My colours').click();
  const every = () => [...screen.host.querySelectorAll('button, summary')];
  await expect.poll(() => every().length).toBeGreaterThan(8);
  const all = every();
  for (const one of all) {
    expect(one.getBoundingClientRect().height, one.textContent ?? '').toBeGreaterThanOrEqual(48);
  }
});

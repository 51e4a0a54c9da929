import { beforeEach, expect, test } from 'vitest';
import { page } from 'vitest/browser';
import { mixNeighbours } from '../../../app/core/paint/mix-neighbours.ts';
import { mixingChart } from '../../../app/core/paint/mixing-chart.ts';
import type { PaintCalls } from '../../../app/state/painting/screen-calls.ts';
import { PuddleList } from '../../../app/ui/mixes/puddle-list.tsx';
import { madePlan } from './made-plan.ts';
import { type Shown, shown } from './shown.ts';

const calls: PaintCalls = {
  mixNeighbours: async (_leaving, ...asked) => mixNeighbours(...asked),
  mixingChart: async (_leaving, paints) => mixingChart(paints),
};
const plan = await madePlan();
/** The darkest first: there is room for lighter and darker beside it. */
const mixes = plan.mixes
  .filter(({ wash, parts }) => wash === 1 && parts.length > 0)
  .sort((one, two) => one.expected[0] - two.expected[0]);
const familyName = (id: number): string => `colour ${id}`;
let screen: Shown;

beforeEach(() => {
  screen = shown(
    <PuddleList
      plan={{ ...plan, mixes: plan.mixes }}
      mixes={mixes.map((mix, n) => (n === 0 ? { ...mix, notes: ['Here is a word on it.'] } : mix))}
      familyName={familyName}
      calls={calls}
    />,
  );
  return () => screen.leave();
});

const next = () => page.getByRole('region', { name: 'Mixes next to it' });
const way = (name: string) => next().getByRole('button', { name, exact: true });

test('says how it dries, how it looks wet, and what is to be minded', async () => {
  await expect
    .element(page.getByTestId('puddles'))
    .toHaveTextContent(/dries to value \d\.\d; wet it/);
  await expect.element(page.getByText('Here is a word on it.')).toBeVisible();
});

test('shows the way to another mix: what to add, its colour beside this one', async () => {
  screen.host.querySelector('summary')?.click();
  await expect.element(way('half a value darker')).toBeVisible();
  const colours = () =>
    [...(next().element().querySelectorAll('[aria-hidden] > span') ?? [])].map(
      (each) => getComputedStyle(each).backgroundColor,
    );
  expect(new Set(colours()).size).toBe(1);
  await way('half a value darker').click();
  await expect.element(next()).toHaveTextContent('of its own paint in the same water');
  await expect.poll(() => new Set(colours()).size).toBe(2);
  await way('half a value lighter').click();
  await expect.element(next()).toHaveTextContent(/parts? of it with .* of water|a touch of water/i);
  await expect.element(way('half a value darker')).toHaveAttribute('aria-pressed', 'false');
  for (const each of screen.host.querySelectorAll('button, summary')) {
    if (each.checkVisibility())
      expect(each.getBoundingClientRect().height).toBeGreaterThanOrEqual(48);
  }
});

test('a failure is said in words', async () => {
  screen.again(
    <PuddleList
      plan={plan}
      mixes={mixes}
      familyName={familyName}
      calls={{ ...calls, mixNeighbours: () => Promise.reject(new Error('x')) }}
    />,
  );
  screen.host.querySelector('summary')?.click();
  await expect.element(page.getByRole('alert')).toHaveTextContent('could not be worked out');
});

test('how much to mix, as she can measure it, and how lighter parts are thinned', async () => {
  const [mix] = mixes;
  if (!mix) throw new Error('no mix');
  const bands = [Math.min(...plan.slots.map(({ band }) => band))];
  const thin = { bands, load: mix.load / 3, consistency: 'tea', target: null } as const;
  const row = { ...mix, weaker: { ...thin, expected: mix.expected } };
  const list = (sheet?: { widthMm: number; heightMm: number }) => (
    <PuddleList
      plan={{ ...plan, mixes: [row] }}
      mixes={[row]}
      familyName={familyName}
      sheet={sheet}
    />
  );
  screen.again(list({ widthMm: 381, heightMm: 279 }));
  const puddles = page.getByTestId('puddles');
  await expect.element(puddles).toHaveTextContent(/ml: .* of water, .*[cm]m of .*\./);
  await expect
    .element(puddles)
    .toHaveTextContent(/lighter parts: .* parts? of it with .* of water/);
  await expect.element(puddles).toHaveTextContent('From pans go by the swatch');
  screen.again(list());
  await expect.element(puddles).not.toHaveTextContent('of water');
});

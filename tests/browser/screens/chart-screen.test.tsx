import { signal } from '@preact/signals';
import { beforeEach, expect, test } from 'vitest';
import { page } from 'vitest/browser';
import { rgbOfLab } from '../../../app/core/colour/lab.ts';
import { mixingChart } from '../../../app/core/paint/mixing-chart.ts';
import { ChartScreen } from '../../../app/screens/chart/chart-screen.tsx';
import type { PaintCalls } from '../../../app/state/painting/screen-calls.ts';
import { madePlan } from './made-plan.ts';
import { madeStudy } from './made-study.ts';
import { type Shown, shown } from './shown.ts';

const calls: PaintCalls = {
  mixNeighbours: () => Promise.reject(new Error('not asked for here')),
  mixingChart: async (_leaving, paints) => mixingChart(paints),
};
const plan = await madePlan();
const { studio } = await madeStudy();
const chart = mixingChart(plan.optics);
let screen: Shown;

beforeEach(() => {
  screen = shown(
    <ChartScreen studio={{ ...studio, plan: signal(plan) }} calls={calls} paintingId="made" />,
  );
  return () => screen.leave();
});

const swatches = () => [
  ...page.getByRole('region', { name: 'Pairs' }).element().querySelectorAll('button'),
];

test('has every pair in three ratios and three strengths, each in its colour', async () => {
  await expect.element(page.getByRole('region', { name: 'Darks' })).toBeVisible();
  const wanted = chart.pairs.flatMap(({ ratios }) => ratios.flat());
  expect(wanted.length).toBe(27);
  expect(swatches().map((each) => getComputedStyle(each).backgroundColor)).toEqual(
    wanted.map(({ dry }) => `rgb(${rgbOfLab(dry).join(', ')})`),
  );
  for (const each of swatches()) {
    const { width, height } = each.getBoundingClientRect();
    expect(Math.min(width, height)).toBeGreaterThanOrEqual(48);
  }
});

test('a touch tells parts and strength', async () => {
  await expect.element(page.getByRole('region', { name: 'Pairs' })).toBeVisible();
  swatches()[0]?.click();
  await expect.element(page.getByRole('status')).toHaveTextContent(/\(3 : 1\), as tea: .*value \d/);
  expect(swatches()[0]?.getAttribute('aria-label')).toMatch(/^mostly .*, some .*, tea, value/);
  swatches()[4]?.click();
  await expect.element(page.getByRole('status')).toHaveTextContent(/\(1 : 1\), as milk/);
});

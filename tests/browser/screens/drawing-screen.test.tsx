import { afterEach, beforeEach, expect, test } from 'vitest';
import { page } from 'vitest/browser';
import { outlineOf } from '../../../app/core/outline/outline.ts';
import { DrawingScreen } from '../../../app/screens/drawing/drawing-screen.tsx';
import type { PictureCalls } from '../../../app/state/painting/screen-calls.ts';
import { type MadeStudy, madeStudy } from './made-study.ts';
import { type Shown, shown } from './shown.ts';

const calls: PictureCalls = {
  outline: async (_signal, reading, slotMap, sizes) => outlineOf(reading, slotMap, sizes),
  softBlend: () => Promise.reject(new Error('not asked for')),
};
let study: MadeStudy;
let screen: Shown;

beforeEach(async () => {
  await page.viewport(390, 844);
  study = await madeStudy();
  screen = shown(<DrawingScreen studio={study.studio} calls={calls} paintingId="made" />);
});
afterEach(() => screen.leave());

/** Ends of the lines drawn, as shares of the sheet's width, to two digits. */
function upright(): string[] {
  const found = [...screen.host.querySelectorAll<SVGPathElement>('[data-testid=drawing] g > path')];
  const lines = found.flatMap((path) => (path.getAttribute('d') ?? '').match(/M[^M]*/g) ?? []);
  return lines.map((line) => (Number(/M([\d.]+)/.exec(line)?.[1]) / 381).toFixed(2)).sort();
}

test('the stripes are outlined; grid and lines are left out and come back', async () => {
  await expect.element(page.getByTestId('drawing')).toBeVisible();
  await expect.element(page.getByTestId('grid-words')).toHaveTextContent('Squares of');
  await page.getByRole('button', { name: 'Grid' }).click();
  await expect.element(page.getByTestId('grid-words')).not.toBeInTheDocument();
  await expect.poll(upright).toEqual(['0.20', '0.40', '0.60', '0.80']);
  await page.getByRole('button', { name: 'Grid' }).click();
  await expect.poll(() => upright().length).toBeGreaterThan(4);
});

test('an edge she loses is not drawn, one she softens is dotted', async () => {
  await page.getByRole('button', { name: 'Grid' }).click();
  await study.studio.decide({ kind: 'edge', place: [0.4, 0.5], wish: 'lose' });
  await expect.poll(upright).toEqual(['0.20', '0.60', '0.80']);
  await study.studio.decide({ kind: 'edge', place: [0.2, 0.5], wish: 'soften' });
  await expect
    .poll(() => screen.host.querySelectorAll('[data-testid=drawing] [stroke-dasharray]').length)
    .toBe(1);
  await page.getByRole('button', { name: 'Soft edges' }).click();
  await expect.poll(upright).toEqual(['0.60', '0.80']);
});

test('every page says where it belongs and has a bar to measure', async () => {
  await expect.element(page.getByRole('button', { name: 'Print 4 pages' })).toBeEnabled();
  const pages = [...screen.host.querySelectorAll('[data-testid=drawing-page]')];
  expect(
    pages.map(
      (each) => /page \d of 4: row \d of 2, column \d of 2/.exec(each.textContent ?? '')?.[0],
    ),
  ).toEqual([
    'page 1 of 4: row 1 of 2, column 1 of 2',
    'page 2 of 4: row 1 of 2, column 2 of 2',
    'page 3 of 4: row 2 of 2, column 1 of 2',
    'page 4 of 4: row 2 of 2, column 2 of 2',
  ]);
  for (const each of pages) expect(each.querySelector('[data-testid=scale-bar]')).not.toBeNull();
});

test('everything to press is at least 48 px high, and nothing runs out at the sides', async () => {
  await expect.element(page.getByTestId('drawing')).toBeVisible();
  const pressed = [...screen.host.querySelectorAll('button, main a')];
  expect(pressed.length).toBeGreaterThan(5);
  for (const one of pressed) {
    const { height, right } = one.getBoundingClientRect();
    expect(height, one.textContent ?? '').toBeGreaterThanOrEqual(48);
    expect(right).toBeLessThanOrEqual(390);
  }
});

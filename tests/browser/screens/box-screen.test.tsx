import { afterAll, afterEach, beforeEach, expect, test } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { createAnalysisClient } from '../../../app/client/analysis-client.ts';
import { boxWishes } from '../../../app/core/decisions/wishes.ts';
import { BoxScreen } from '../../../app/screens/box/box-screen.tsx';
import { createOwnBox, type OwnBoxState } from '../../../app/state/paints/own-box.ts';
import { createPaintDrafts } from '../../../app/state/paints/paint-drafts.ts';
import { type Shown, shown } from './shown.ts';

const client = createAnalysisClient();
afterAll(() => client.dispose());

let kept: Map<string, unknown>;
let ownBox: OwnBoxState;
let screen: Shown;

/** The screen as it is in a window just opened, with what the last one kept. */
function openWindow(): void {
  const store = {
    setting: async (name: string) => structuredClone(kept.get(name)),
    keepSetting: async (name: string, value: unknown) => {
      kept.set(name, structuredClone(value));
    },
  };
  ownBox = createOwnBox(store, client);
  const paintDrafts = createPaintDrafts({ store, client, ownBox });
  screen = shown(<BoxScreen ownBox={ownBox} paintDrafts={paintDrafts} cameFrom={null} />);
}

beforeEach(async () => {
  await page.viewport(390, 844);
  kept = new Map();
  openWindow();
  await expect.element(page.getByRole('region', { name: 'Built-in' })).toHaveTextContent('PB29');
});
afterEach(() => screen.leave());

const status = () => page.getByRole('region', { name: 'What you own' }).getByRole('status');
const owns = (name: string) => page.getByRole('checkbox', { name: `I own it: ${name}` });
const button = (name: string | RegExp) => page.getByRole('button', { name });
const listed = () => page.getByRole('region', { name: 'Built-in' }).getByRole('listitem');

function reload(): void {
  screen.leave();
  openWindow();
}

test('ticks decide what plans choose from, and are kept', async () => {
  await expect.element(status()).toHaveTextContent('all 33 paints count');
  await owns('ultramarine blue').click();
  await expect.element(status()).toHaveTextContent('One paint is ticked');
  await owns('burnt sienna').click();
  await expect.element(status()).toHaveTextContent('2 of 33 paints are ticked');
  expect(boxWishes(ownBox.box.value)).toEqual({
    box: ['pb29-ultramarine-blue', 'pbr7-burnt-sienna'],
  });
  reload();
  await expect.element(owns('burnt sienna')).toBeChecked();
  await expect.element(owns('raw sienna')).not.toBeChecked();
  await button('Tick all').click();
  await expect.element(status()).toHaveTextContent('33 of 33');
  await button('None').click();
  await expect.element(status()).toHaveTextContent('all 33 paints count');
});

test('a row says values, use, what is remembered, and the caution', async () => {
  const row = listed().filter({ hasText: 'PB28' });
  await expect.element(row).toHaveTextContent('value 4.2 to 8.6');
  await expect.element(row).toHaveTextContent('Good for lifting out; granulating washes.');
  await expect.element(row).toHaveTextContent('granulates, lightfastness I (from memory)');
  await expect.element(row).toHaveTextContent(/cobalt.*Check the label/);
  await expect
    .element(listed().filter({ hasText: 'PR5' }))
    .toHaveTextContent('lightfastness unknown');
  await expect
    .element(page.getByText('The label, the safety data sheet and your local rules come first'))
    .toBeVisible();
});

test('order and filters; each choice says how many it leaves', async () => {
  await button('Darkest first').click();
  await expect.element(listed().first()).toHaveTextContent('Prussian blue');
  await page.getByText('Filters: 33 of 33 shown').click();
  await button('darks 8').click();
  await expect.poll(() => listed().elements().length).toBe(8);
  await button('blue 3').click();
  await expect.poll(() => listed().elements().length).toBe(3);
  await expect.element(button('red 0')).toBeDisabled();
  await expect.element(page.getByText('Filters: 3 of 33 shown, 2 set')).toBeVisible();
});

test('a mixed tube is typed, survives a reload, is saved, changed, taken out and put back', async () => {
  await owns('burnt sienna').click();
  await button('Add a paint').click();
  const field = (name: string) => page.getByRole('textbox', { name });
  await expect.element(field('Name, in')).toHaveFocus();
  await field('Name, in').fill('My green gold');
  await field('Colour Index').fill('PG36, yellow');
  await userEvent.keyboard('{Tab}');
  await expect.element(page.getByText('“yellow” is no Colour Index name')).toBeVisible();
  await field('Colour Index').fill('PG36, PY150');
  await expect.element(button(/^transparent$/)).toHaveAttribute('aria-pressed', 'true');
  await expect
    .element(field('Caution'))
    .toHaveValue('Contains nickel: keep it off the skin. Check the label.');
  await button('granulates a little').click();

  reload();
  await expect.element(field('Colour Index')).toHaveValue('PG36, PY150');
  await expect.element(button('granulates a little')).toHaveAttribute('aria-pressed', 'true');
  await button('Put it in the box').click();
  await expect.element(page.getByText('Nothing is known yet of how it looks')).toBeVisible();
  await expect.element(page.getByRole('radio').first()).toHaveFocus();
  await page.getByRole('radio', { name: /phthalocyanine green yellow shade/ }).click();
  await button('Put it in the box').click();
  const row = page
    .getByRole('region', { name: 'Paints of your own' })
    .getByRole('listitem')
    .filter({ hasText: 'My green gold' });
  await expect
    .element(row)
    .toHaveTextContent('Not measured: behaves like phthalocyanine green yellow shade.');
  await expect.element(row).toHaveTextContent('2 pigments in one tube');
  await expect.element(row).toHaveTextContent('Granulates a little, transparent, stains');
  const { box, ownPaints } = boxWishes(ownBox.box.value);
  expect(ownPaints?.map(({ ci, K, S }) => [ci, K.length, S.length])).toEqual([
    [['PG36', 'PY150'], 36, 36],
  ]);
  expect(box).toEqual(['pbr7-burnt-sienna', ownPaints?.[0]?.id]);

  await button('Change My green gold').click();
  await field('Name, in').fill('Green gold, old tube');
  await button('Keep the change').click();
  await expect.element(button('Change Green gold, old tube')).toBeVisible();
  expect(ownBox.box.value.paints.map(({ revision }) => revision)).toEqual([1, 2]);

  await button('Take out Green gold, old tube').click();
  await expect.element(page.getByText('Green gold, old tube is taken out.')).toBeVisible();
  expect(boxWishes(ownBox.box.value)).toEqual({ box: ['pbr7-burnt-sienna'] });
  await button('Put Green gold, old tube back').click();
  await expect.element(button('Take out Green gold, old tube')).toBeVisible();
});

test('at every size nothing is too small to touch or too wide to see', async () => {
  await page.getByText('Filters:').click();
  await button('Add a paint').click();
  for (const [width, height] of [
    [390, 844],
    [820, 1180],
    [1180, 820],
  ] as const) {
    await page.viewport(width, height);
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
    const small = [
      ...screen.host.querySelectorAll('button, a, summary, [type=checkbox], [type=text]'),
    ]
      .map((each) => [each.textContent, each.getBoundingClientRect().height] as const)
      .filter(([, pixels]) => pixels > 0 && pixels < 47.5);
    expect(small).toEqual([]);
  }
});

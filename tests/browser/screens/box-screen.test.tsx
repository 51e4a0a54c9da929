import { afterAll, afterEach, beforeEach, expect, test } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { createAnalysisClient } from '../../../app/client/analysis-client.ts';
import { boxWishes } from '../../../app/core/decisions/wishes.ts';
import { BoxScreen } from '../../../app/screens/box/box-screen.tsx';
import { createOwnBox, type OwnBoxState } from '../../../app/state/paints/own-box.ts';
import { createPaintDrafts } from '../../../app/state/paints/paint-drafts.ts';
import { keptSettings } from '../../support/state/kept-settings.ts';
import { type Shown, shown } from './shown.ts';

const client = createAnalysisClient();
afterAll(() => client.dispose());

let kept: Map<string, unknown>;
let ownBox: OwnBoxState;
let screen: Shown;

/** The screen as it is in a window just opened, with what the last one kept. */
function openWindow(): void {
  const store = keptSettings(kept);
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
const owns = (name: string) =>
  page.getByRole('checkbox', { name: `I own it: ${name}`, exact: true });
const button = (name: string | RegExp) => page.getByRole('button', { name });
const listed = () => page.getByRole('region', { name: 'Built-in' }).getByRole('listitem');

function reload(): void {
  screen.leave();
  openWindow();
}

const cautionTyped = () =>
  (page.getByRole('textbox', { name: 'Caution' }).element() as HTMLTextAreaElement).value;
const open = (name: string) => button(`More about ${name}`).click();

test('ticks decide what plans choose from, and are kept', async () => {
  await expect.element(status()).toHaveTextContent('the 25 paints most painters own.');
  await owns('ultramarine blue').click();
  await expect.element(status()).toHaveTextContent('1 paint ticked');
  await owns('burnt sienna').click();
  await expect.element(status()).toHaveTextContent('2 paints ticked');
  expect(boxWishes(ownBox.box.value)).toEqual({
    box: ['pb29-ultramarine-blue', 'pbr7-burnt-sienna'],
  });
  reload();
  await expect.element(owns('burnt sienna')).toBeChecked();
  await expect.element(owns('raw sienna')).not.toBeChecked();
  await button('Tick what most own').click();
  await expect.element(status()).toHaveTextContent('25 paints ticked');
  await button('Untick all').click();
  await expect.element(status()).toHaveTextContent('Nothing ticked yet');
});

test('a row says in short what it is and what to mind, the rest on a touch', async () => {
  const row = listed().filter({ hasText: 'PB28' });
  await expect.element(row).toHaveTextContent(/^Cobalt blue.*Contains cobalt.*More$/i);
  expect(row.element().textContent).not.toContain('never sand');
  expect(row.element().textContent).not.toContain('Good for');
  await open('cobalt blue');
  await expect.element(row).toHaveTextContent(/may cause allergy.*never sand, scrape, spray/);
  await expect.element(row).toHaveTextContent('Good for mixing.');
  await expect.element(row).toHaveTextContent('granulates a little, lightfastness I.');
  await expect.element(row).toHaveTextContent(/value \d\.\d to \d\.\d/);
  await expect
    .element(row)
    .toHaveTextContent(
      'Taken from acrylic paint of the same pigment; your tube may differ somewhat.',
    );
  await open('sap green');
  await expect
    .element(listed().filter({ hasText: 'sap green' }))
    .toHaveTextContent('Made of PG7, PY150 and PBr7; makers differ.');
  await expect
    .element(page.getByText('the label, the safety data sheet and your local rules come first'))
    .toHaveTextContent('no brush in the mouth');
});

test('the paints most painters own come first, the others by search or on asking', async () => {
  expect(listed().elements()).toHaveLength(25);
  const search = page.getByRole('searchbox', { name: 'Find a paint' });
  await search.fill('pb 60');
  await expect.poll(() => listed().elements().length).toBe(2);
  await owns('indanthrone blue').click();
  await search.fill('sap green hue');
  await expect.element(listed()).toHaveTextContent('mixed tube, pigments not told');
  await search.fill('rhubarb');
  await expect.element(page.getByText('No paint here is called that')).toBeVisible();
  await button('Show them all').click();
  await expect.poll(() => listed().elements().length).toBe(26); // what she owns stands with them
  await owns('indanthrone blue').click();
  await expect.element(status()).toHaveTextContent('Nothing ticked yet');
  expect(listed().elements()).toHaveLength(26); // it does not go away under her finger
  await button('Show 86 more paints').click();
  await expect.poll(() => listed().elements().length).toBe(112);
});

test('twelve paints are ticked by twelve touches anywhere on their lines, none of them hidden', async () => {
  const lines = [...screen.host.querySelectorAll<HTMLElement>('label:has([type=checkbox])')];
  for (const line of lines.slice(0, 12)) {
    const { height } = line.getBoundingClientRect();
    expect(height, line.textContent ?? '').toBeGreaterThanOrEqual(48);
    expect(height, line.textContent ?? '').toBeLessThan(90);
    line.querySelector('strong')?.click();
  }
  await expect.element(status()).toHaveTextContent('12 paints ticked');
  const [first, last] = [lines[0], lines[11]].map((line) => line?.getBoundingClientRect());
  expect((last?.bottom ?? 0) - (first?.top ?? 0)).toBeLessThan(844); // one screen of scrolling
});

test('order and filters among all paints; each choice says how many it leaves', async () => {
  await page.getByText('Sort and filter').click();
  await button('Darkest first').click();
  await expect.element(listed().first()).toHaveTextContent('Prussian blue');
  await button(/^lights only \d/).click();
  const lights = Number(
    button(/^lights only \d/)
      .element()
      .textContent?.match(/\d+/)?.[0],
  );
  await expect.poll(() => listed().elements().length).toBe(lights);
  await button(/^orange \d/).click();
  await expect
    .element(page.getByText(/^Sort and filter: 2 filters, \d+ of 112 paints$/))
    .toBeVisible();
  await expect.element(button('blue 0')).toBeDisabled();
});

test('what was wrongly named is told until she has read it', async () => {
  kept.set('paint box', {
    schema: 2,
    owned: ['hue-cadmium-yellow'],
    paints: [],
    gone: [],
    renamed: ['hue-cadmium-yellow'],
  });
  reload();
  await expect.element(page.getByText(/it is now “cadmium yellow hue”/)).toBeVisible();
  await expect.element(owns('cadmium yellow hue')).toBeChecked();
  await button('I have read it').click();
  await expect.element(page.getByText(/it is now/)).not.toBeInTheDocument();
  reload();
  await expect.element(owns('cadmium yellow hue')).toBeChecked();
  await expect.element(page.getByText(/it is now/)).not.toBeInTheDocument();
});

test('her own paints of an earlier version are by the table of today, and all is kept', async () => {
  const paint = {
    id: 'own-1',
    revision: 1,
    name: 'My blue',
    ci: ['PB29'],
    K: new Array<number>(36).fill(0.2),
    S: new Array<number>(36).fill(0.02),
    properties: {
      transparency: 'T',
      staining: 0,
      granulation: 2,
      lightfastness: 'I',
      caution: null,
    },
    optics: { from: 'measured', sure: 0.8, why: 'Quite sure.' },
  };
  const before = { schema: 1, owned: ['own-1', 'pbr7-burnt-sienna'], paints: [paint], gone: [] };
  kept.set('paint box', before);
  reload();
  await expect.element(owns('My blue')).toBeChecked();
  const now = kept.get('paint box') as typeof ownBox.box.value;
  expect(now).toMatchObject({ schema: 2, owned: before.owned, gone: [] });
  expect(now.paints[0]).toEqual(paint);
  expect(now.paints[1]).toMatchObject({ id: 'own-1', revision: 2, name: 'My blue' });
  expect(now.paints[1]?.strength).toBeGreaterThan(0);
  expect(now.paints[1]?.mostLoad).toBeGreaterThan(0);
});

test('a ready-mixed tube that is in the list need not be typed', async () => {
  await button('Add a paint').click();
  await page.getByRole('textbox', { name: 'Name, in' }).fill('Sap green');
  await expect.element(page.getByText(/Sap green is in the list\. Made of PG7/)).toBeVisible();
  await button('Tick that one instead').click();
  await expect.element(owns('sap green')).toBeChecked();
  await expect.element(button('Add a paint')).toBeVisible();
});

test('a poison typed by its name is not to be painted with', async () => {
  await button('Add a paint').click();
  await page.getByRole('textbox', { name: 'Colour Index' }).fill('PW1');
  await expect
    .poll(cautionTyped)
    .toMatch(/^Contains lead: poison.*Do not paint with it\..*hazardous waste\.$/);
});

test('a pigment nobody knows here is not taken for a harmless one', async () => {
  await button('Add a paint').click();
  const names = page.getByRole('textbox', { name: 'Colour Index' });
  await names.fill('PB29');
  await expect.element(page.getByText('No special care known.')).toBeVisible();
  await names.fill('PR258');
  const unknown = 'Not known here: ask the label and the safety data sheet before you use it.';
  await expect.poll(cautionTyped).toBe(unknown); // as any caution: kept with the paint
  expect(page.getByText('No special care known.').elements()).toEqual([]);
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
    .poll(cautionTyped)
    .toMatch(/^Contains nickel: may cause allergy.*out of the drain\.$/);
  await button('granulates a little').click();

  reload();
  await expect.element(field('Colour Index')).toHaveValue('PG36, PY150');
  await expect.element(button('granulates a little')).toHaveAttribute('aria-pressed', 'true');
  await button('Add').click();
  await expect.element(page.getByText('Nothing is known yet of how it looks')).toBeVisible();
  await expect.element(page.getByRole('radio').first()).toHaveFocus();
  await page.getByRole('radio', { name: /phthalocyanine green yellow shade/ }).click();
  await button('Add').click();
  const row = page
    .getByRole('region', { name: 'Paints of your own' })
    .getByRole('listitem')
    .filter({ hasText: 'My green gold' });
  await expect
    .element(row)
    .toHaveTextContent('Not measured: behaves like phthalocyanine green yellow shade');
  await open('My green gold');
  await expect.element(row).toHaveTextContent('It counts as 2 pigments in a mix');
  await expect.element(row).toHaveTextContent('Granulates a little (yours), transparent, stains');
  const { box, ownPaints } = boxWishes(ownBox.box.value);
  expect(ownPaints?.map(({ ci, K, S }) => [ci, K.length, S.length])).toEqual([
    [['PG36', 'PY150'], 36, 36],
  ]);
  expect(ownPaints?.[0]?.strength).toBeGreaterThan(1); // that of the green it is like
  expect(box).toEqual(['pbr7-burnt-sienna', ownPaints?.[0]?.id]);

  await button('Change My green gold').click();
  await field('Name, in').fill('Green gold, old tube');
  await button('Keep the change').click();
  await open('Green gold, old tube');
  await expect.element(button('Change Green gold, old tube')).toBeVisible();
  expect(ownBox.box.value.paints.map(({ revision }) => revision)).toEqual([1, 2]);

  await button('Take out Green gold, old tube').click();
  await expect.element(page.getByText('Green gold, old tube is taken out.')).toBeVisible();
  expect(boxWishes(ownBox.box.value)).toEqual({ box: ['pbr7-burnt-sienna'] });
  await button('Put Green gold, old tube back').click();
  await open('Green gold, old tube');
  await expect.element(button('Take out Green gold, old tube')).toBeVisible();
});

test('at every size nothing is too small to touch or too wide to see', async () => {
  await page.getByText('Sort and filter').click();
  await button('Add a paint').click();
  for (const [width, height] of [
    [390, 844],
    [820, 1180],
    [1180, 820],
  ] as const) {
    await page.viewport(width, height);
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
    const small = [
      ...screen.host.querySelectorAll(
        'button, a, summary, label:has([type=checkbox]), [type=text]',
      ),
    ]
      .map((each) => [each.textContent, each.getBoundingClientRect().height] as const)
      .filter(([, pixels]) => pixels > 0 && pixels < 47.5);
    expect(small).toEqual([]);
  }
});

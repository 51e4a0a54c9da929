import type { LaunchOptions, Page } from '@playwright/test';
import { launchOptions, walkArgs } from '../support/chromium.mjs';
import { expect, test } from './support/app-page.ts';
import { driveClock, easelPlace, goToDrying, mainButton, pressOn } from './support/easel-walk.ts';
import { faultsAtEverySize, forShow, phone } from './support/every-size.ts';
import { smallExample } from './support/fixture-file.ts';
import { photoOfSteps } from './support/photo-of-steps.ts';
import { planOf } from './support/planned-painting.ts';
import {
  example,
  photoInput,
  picture,
  prompt,
  type ScreenName,
  screen,
  toTheEasel,
  toTheWashes,
} from './support/walk.ts';

test.use({
  serviceWorkers: 'allow', // the first screen says whether all is kept
  isMobile: false, // so that a page too wide is not made smaller to fit
  launchOptions: launchOptions([
    ...walkArgs,
    '--use-fake-device-for-media-stream',
    '--use-fake-ui-for-media-stream',
  ]) as LaunchOptions,
});

type Look = (name: ScreenName, shown: string) => Promise<void>;

/** Where she decides for herself, and the row of the value study that leads there. */
const decided: readonly (readonly [ScreenName, RegExp])[] = [
  ['whites', /^Whites to keep/],
  ['edges', /^Soften or lose edges/],
  ['colours', /^Colours/],
  ['changes', /^Change the picture/],
  ['hues', /^Colour scheme/],
];

const fromThePlan: readonly (readonly [ScreenName, string])[] = [
  ['chart', 'Mixing chart of these paints'],
  ['drawing', 'Drawing to transfer'],
  ['plan-page', 'Plan on one page'],
];

/** Through every screen from the first to the decisions; `look` is called at each once it stands still. */
async function throughDecisions(page: Page, look: Look): Promise<void> {
  await page.goto('./');
  await expect(example(page)).toBeVisible();
  await look('start', 'start');
  await page.getByRole('link', { name: 'About Firstwash' }).click();
  await expect(page.getByTestId('version')).toBeVisible();
  await look('about', 'about');
  await page.getByRole('link', { name: 'Keep a copy, bring one back' }).click();
  await expect(page.getByRole('button', { name: 'Make the copy' })).toBeVisible();
  await look('copies', 'copies');
  await page.getByRole('link', { name: 'Paintings' }).click();
  await page.getByRole('link', { name: 'Camera' }).click();
  await expect(page.getByRole('button', { name: 'Take the photo' })).toBeEnabled();
  await look('camera', 'camera');
  await page.getByRole('button', { name: 'Cancel' }).click();
  if (forShow) await example(page).click();
  else await photoInput(page).setInputFiles(await smallExample());
  await expect(toTheWashes(page)).toBeVisible();
  await expect(page.getByTestId('sentence')).toBeVisible();
  await look('look', 'look');
  for (const way of ['Few values', 'Squint', 'Edges', 'Touch for value']) {
    await page.getByRole('button', { name: way, exact: true }).click();
    await look('look', `look-${way.toLowerCase().replaceAll(' ', '-')}`);
  }
  await page.getByRole('button', { name: 'Touch for value', exact: true }).click();
  await page.getByRole('link', { name: 'Subject and background' }).click();
  await expect(page.getByText('Getting the picture ready')).toHaveCount(0);
  await look('subject', 'subject');
  await page.getByRole('link', { name: 'Value study' }).click();
  await expect(toTheWashes(page)).toBeVisible();
  for (const [name, place] of decided) {
    const link = page.getByRole('link', { name: place });
    await link.scrollIntoViewIfNeeded(); // as the panel is scrolled it comes up, and the link with it
    await link.click();
    await expect(screen(page, name).getByRole('button', { name: 'Undo' })).toBeVisible();
    await look(name, name);
    await page.getByRole('link', { name: 'Done' }).click();
    await expect(toTheWashes(page)).toBeVisible();
  }
  await page.getByRole('link', { name: 'Sheet', exact: true }).click();
  await expect(page.getByTestId('cut-stage')).toBeVisible();
  await look('sheet', 'sheet');
  const cut = page.getByRole('button', { name: 'Crop', exact: true });
  if (await cut.isVisible()) {
    await cut.click(); // where there is room both parts stand side by side
    await look('sheet', 'sheet-cut');
  }
  await page.getByRole('button', { name: 'Use this part' }).click();
  await expect(toTheWashes(page)).toBeVisible();
}

/** And from the plan to the end of a session. */
async function throughSession(page: Page, look: Look): Promise<void> {
  await driveClock(page);
  await page.goto('./');
  if (forShow) {
    await example(page).click();
    await toTheWashes(page).click();
    await expect(toTheEasel(page)).toBeVisible();
  } else await planOf(page, 'small example');
  await expect(picture(page)).toBeVisible();
  await look('plan', 'plan');
  for (const [name, link] of fromThePlan) {
    await page.getByRole('link', { name: link }).click();
    await expect(screen(page, name)).toBeVisible();
    await look(name, name);
    await page.getByRole('link', { name: 'Wash plan' }).click();
    await expect(toTheEasel(page)).toBeVisible();
  }
  await page.getByRole('link', { name: 'Paints', exact: true }).click();
  const paints = screen(page, 'paints');
  await expect(paints.getByRole('heading', { name: 'Other choices' })).toBeVisible();
  await look('paints', 'paints');
  await paints.getByRole('region', { name: 'Chosen paints' }).getByRole('button').first().click();
  for (const fold of await paints.locator('summary').all()) await fold.click();
  await look('paints', 'paints-open');
  const paintsAt = page.url();
  await page.getByRole('link', { name: 'Your paint box' }).first().click();
  await expect(page.getByRole('checkbox').first()).toBeVisible();
  await look('box', 'box');
  await page.getByRole('main').getByRole('button', { name: /^More/ }).first().click();
  await page
    .getByRole('link', { name: /^Measure it from a photo/ })
    .first()
    .click();
  await expect(screen(page, 'measure').getByRole('heading', { level: 2 })).toBeVisible();
  await look('measure', 'measure');
  await page.getByLabel('Choose a photo').setInputFiles(await photoOfSteps(page));
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  await expect(page.getByTestId('sure')).toBeVisible();
  await look('measure', 'measure-found');
  await page.getByRole('button', { name: 'Keep it' }).click();
  await page.getByRole('button', { name: /^More about my/ }).click();
  await page.getByRole('link', { name: /^Measure it again/ }).click();
  await page.getByRole('link', { name: 'Put it right by a page of mixes' }).click();
  for (const paint of (await page.getByRole('checkbox').all()).slice(0, 2)) await paint.check();
  await look('mix-page', 'mix-page');
  await page.goto(paintsAt);
  await expect(screen(page, 'paints')).toBeVisible();
  await page.getByRole('link', { name: 'Wash plan' }).click();
  await toTheEasel(page).click();
  await expect(prompt(page)).toBeVisible();
  while ((await easelPlace(page)).title !== 'First wash') await pressOn(page);
  await pressOn(page); // the brush is on the paper, the clock runs
  await look('easel', 'easel');
  await goToDrying(page);
  await look('easel', 'easel-drying');
  await page.getByRole('button', { name: 'Pause' }).click();
  await look('easel', 'easel-paused');
  while (await mainButton(page).isVisible()) await pressOn(page);
  await look('easel', 'easel-finished');
  await page.getByRole('link', { name: 'See the record' }).click();
  await expect(screen(page, 'record').getByText('Times', { exact: true })).toBeVisible();
  await look('record', 'record');
  for (const fold of await screen(page, 'record').locator('summary').all()) await fold.click();
  await expect(screen(page, 'record').getByRole('table').first()).toBeVisible();
  await look('record', 'record-open');
  await page.getByRole('link', { name: 'Paintings' }).click();
  await expect(page.getByRole('region', { name: 'Go on' })).toBeVisible();
  await look('start', 'start-again');
}

/** At every size at each screen. */
async function expectNoFaults(
  page: Page,
  through: (page: Page, look: Look) => Promise<void>,
): Promise<void> {
  const faults: string[] = [];
  await through(page, async (name, shown) => {
    faults.push(...(await faultsAtEverySize(page, name, shown)));
  });
  expect(faults).toEqual([]);
}

// One walk after the other through half the screens each, none of them twice.
test.describe('at every size, by finger and by mouse', () => {
  test.use({ viewport: phone, hasTouch: false });
  test('every screen up to the decisions can be read, pressed and seen whole', async ({ page }) =>
    expectNoFaults(page, throughDecisions));
  test('every screen from the plan to the record can be read, pressed and seen whole', async ({
    page,
  }) => expectNoFaults(page, throughSession));
});

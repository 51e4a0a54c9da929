import { copyFileSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { LaunchOptions, Page } from '@playwright/test';
import { chromiumArgs, launchOptions } from '../support/chromium.mjs';
import { accessibilityFaults } from './support/accessibility.ts';
import { expect, test } from './support/app-page.ts';
import { driveClock, easelPlace, goToDrying, mainButton, pressOn } from './support/easel-walk.ts';
import { layoutFaults } from './support/page-layout.ts';
import {
  example,
  picture,
  prompt,
  type ScreenName,
  screen,
  toTheEasel,
  toTheWashes,
} from './support/walk.ts';

const top = join(import.meta.dirname, '..', '..');
const shots = join(top, 'test-results', 'screens');
mkdirSync(shots, { recursive: true });

test.use({
  serviceWorkers: 'allow', // the first screen says whether all is kept
  isMobile: false, // so that a page too wide is not made smaller to fit
  launchOptions: {
    ...(launchOptions() as LaunchOptions),
    args: [...chromiumArgs, '--use-fake-device-for-media-stream', '--use-fake-ui-for-media-stream'],
  },
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

/** Through every screen, to the end of a session; `look` is called at each once it stands still. */
async function throughAll(page: Page, look: Look): Promise<void> {
  await driveClock(page);
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
  await example(page).click();
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
  await toTheWashes(page).click();
  await expect(toTheEasel(page)).toBeVisible();
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
  await page.getByRole('link', { name: 'Your paint box' }).first().click();
  await expect(page.getByRole('checkbox').first()).toBeVisible();
  await look('box', 'box');
  await page.goBack();
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

/**
 * 48 px everywhere; what is pressed at the easel with wet hands 64, the pictures to choose from as wide at least. Back,
 * Pause and More are one slim row.
 */
const easelActions =
  '[data-screen=easel] > :last-child :is(button, a):not([data-slim] *, [data-slim])';
const easelViews = '[data-screen=easel] fieldset button';

async function smallEaselTargets(page: Page): Promise<string[]> {
  const sides = (selector: string, side: 'width' | 'height') =>
    page
      .locator(selector)
      .evaluateAll(
        (found, which) =>
          found.map(
            (each) => [each.textContent, each.getBoundingClientRect()[which], which] as const,
          ),
        side,
      );
  const boxes = [...(await sides(easelActions, 'height')), ...(await sides(easelViews, 'width'))];
  return boxes
    .filter(([, px]) => px < 63.5)
    .map(([name, px, side]) => `'${name}' at the easel has a ${side} of ${px.toFixed(0)} px`);
}

const phone = { width: 390, height: 844 };
const upright = { width: 820, height: 1180 };
const across = { width: 1180, height: 820 };
const desktop = { width: 1440, height: 900 };

/** With SHOTS=1 before the command every screen is kept as a picture, to be looked at. */
async function keepPicture(page: Page, name: string): Promise<void> {
  const path = join(shots, `${name}.png`);
  const isReadmes = process.env.UPDATE && name === 'easel-390-light';
  if (isReadmes)
    await screen(page, 'easel')
      .getByRole('region', { name: 'What to do' })
      .evaluate((panel) => panel.scrollTo(0, 0));
  if (process.env.SHOTS || isReadmes) await page.screenshot({ path });
  // The README shows what the app looks like: made here, so that it stays true.
  if (isReadmes) copyFileSync(path, join(top, '.github', 'easel.png'));
}

/** A page that was just given another size may still be moving: only what stays wrong is a fault. */
async function lastingFaults(page: Page, look: () => Promise<string[]>): Promise<string[]> {
  const frame = () => page.evaluate(() => new Promise<number>(requestAnimationFrame));
  await frame();
  await frame();
  let found = await look();
  for (let again = 0; again < 20 && found.length > 0; again++) {
    await page.waitForTimeout(100);
    found = await look();
  }
  return found;
}

/**
 * Faults of what stands on the page at one size. Words and roles are the same at all sizes, so each walk asks axe
 * at one of them; on the phone light, and dark for its colours.
 */
async function faultsAt(page: Page, size: typeof phone, shown: string): Promise<string[]> {
  await page.setViewportSize(size);
  await page.evaluate(() => scrollTo(0, 0)); // axe looks where the page stands
  const faults: string[] = [];
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    await keepPicture(page, `${shown}-${size.width}-${colorScheme}`);
    if (size !== phone && (colorScheme === 'dark' || size !== desktop)) continue;
    const of = colorScheme === 'light' ? 'all' : 'contrast';
    const found = await accessibilityFaults(page, of);
    faults.push(...found.map((fault) => `${colorScheme}: ${fault}`));
  }
  faults.push(
    ...(await lastingFaults(page, async () => [
      ...(await layoutFaults(page, 48)),
      ...(await smallEaselTargets(page)),
    ])),
  );
  return faults.map((fault) => `${shown}, ${size.width} px: ${fault}`);
}

/** With text at 200 % nothing is cut, covered or pushed off the side of a phone. */
async function faultsOfLargeText(page: Page, shown: string): Promise<string[]> {
  const textSize = (size: string): Promise<void> =>
    page.evaluate((value) => {
      document.documentElement.style.fontSize = value;
    }, size);
  await page.setViewportSize(phone);
  await textSize('200%');
  await keepPicture(page, `${shown}-390-text-200`);
  const faults = await lastingFaults(page, () => layoutFaults(page, 48));
  await textSize('');
  return faults.map((fault) => `${shown}, text at 200 %: ${fault}`);
}

test.describe('by touch', () => {
  test.use({ viewport: phone, hasTouch: true });
  test('every screen can be read, pressed and seen whole on phone and upright tablet', async ({
    page,
  }) => {
    const faults: string[] = [];
    await throughAll(page, async (name, shown) => {
      await expect(screen(page, name)).toBeVisible();
      faults.push(...(await faultsAt(page, upright, shown)));
      faults.push(...(await faultsOfLargeText(page, shown)));
      faults.push(...(await faultsAt(page, phone, shown)));
    });
    expect(faults).toEqual([]);
  });
});

test.describe('by mouse', () => {
  test.use({ viewport: across, hasTouch: false });
  test('every screen can be read, pressed and seen whole on tablet across and desktop', async ({
    page,
  }) => {
    const faults: string[] = [];
    await throughAll(page, async (name, shown) => {
      await expect(screen(page, name)).toBeVisible();
      faults.push(...(await faultsAt(page, desktop, shown)));
      faults.push(...(await faultsAt(page, across, shown)));
    });
    expect(faults).toEqual([]);
  });
});

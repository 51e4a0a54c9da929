import { copyFileSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { CDPSession, LaunchOptions, Page } from '@playwright/test';
import { chromiumArgs, launchOptions } from '../support/chromium.mjs';
import { accessibilityFaults } from './support/accessibility.ts';
import { expect, test } from './support/app-page.ts';
import { driveClock, easelPlace, goToDrying, mainButton, pressOn } from './support/easel-walk.ts';
import { smallExample } from './support/fixture-file.ts';
import { layoutFaults } from './support/page-layout.ts';
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

/** What is shown to others is the example as it is; sizes and words are the same with its small copy. */
const forShow = Boolean(process.env.SHOTS || process.env.UPDATE);

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

const desktop = { width: 1440, height: 900, touch: false };
const across = { width: 1180, height: 820, touch: false };
const upright = { width: 820, height: 1180, touch: true };
const phone = { width: 390, height: 844, touch: true };
const sizes = [desktop, across, upright, phone] as const;
type Size = (typeof sizes)[number];

const devtoolsOf = new WeakMap<Page, CDPSession>();

/** Gives the page a size, and the finger or the mouse that goes with it (CSS `pointer` and `hover`). */
async function setSize(page: Page, size: Size): Promise<void> {
  const devtools = devtoolsOf.get(page) ?? (await page.context().newCDPSession(page));
  devtoolsOf.set(page, devtools);
  await devtools.send('Emulation.setTouchEmulationEnabled', { enabled: size.touch });
  await page.setViewportSize(size);
  await expect
    .poll(() => page.evaluate(() => matchMedia('(pointer: coarse)').matches))
    .toBe(size.touch);
}

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
 * Faults of what stands on the page at one size. Words and roles are the same at many, so axe is asked at the
 * largest and the smallest; on the phone light, and dark for its colours.
 */
async function faultsAt(page: Page, size: Size, name: ScreenName, shown: string) {
  await setSize(page, size);
  await page.evaluate(() => scrollTo(0, 0)); // axe looks where the page stands
  const faults: string[] = [];
  for (const colorScheme of ['light', 'dark'] as const) {
    const of = colorScheme === 'light' ? 'all' : 'contrast';
    const asked = size === phone || (size === desktop && of === 'all');
    if (!asked && !forShow) continue;
    await page.emulateMedia({ colorScheme });
    await keepPicture(page, `${shown}-${size.width}-${colorScheme}`);
    if (!asked) continue;
    const found = await accessibilityFaults(page, of);
    faults.push(...found.map((fault) => `${colorScheme}: ${fault}`));
  }
  faults.push(
    ...(await lastingFaults(page, async () => [
      ...(await layoutFaults(page, 48)),
      ...(name === 'easel' ? await smallEaselTargets(page) : []),
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
  await setSize(page, phone);
  await textSize('200%');
  await keepPicture(page, `${shown}-390-text-200`);
  const faults = await lastingFaults(page, () => layoutFaults(page, 48));
  await textSize('');
  return faults.map((fault) => `${shown}, text at 200 %: ${fault}`);
}

/** At every size at each screen: by mouse across and on a desktop, by touch upright, with large text, and on a phone. */
async function expectNoFaults(
  page: Page,
  through: (page: Page, look: Look) => Promise<void>,
): Promise<void> {
  const faults: string[] = [];
  await through(page, async (name, shown) => {
    await expect(screen(page, name)).toBeVisible();
    for (const size of sizes) {
      if (size === phone) faults.push(...(await faultsOfLargeText(page, shown)));
      faults.push(...(await faultsAt(page, size, name, shown)));
    }
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

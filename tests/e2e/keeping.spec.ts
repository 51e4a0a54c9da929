import type { Page } from '@playwright/test';
import { png } from '../support/png.ts';
import { expect, test } from './support/app-page.ts';
import {
  afterTap,
  clockSeconds,
  easelPlace,
  goToDrying,
  goToStep,
  pressOn,
} from './support/easel-walk.ts';
import { caseFile, photograph, smallPhoto } from './support/fixture-file.ts';
import { easelOfSmallPhoto, planOf } from './support/planned-painting.ts';
import { readyOffline } from './support/ready-offline.ts';
import {
  easelWith,
  keptRows,
  lookAt,
  photoInput,
  planFor,
  prompt,
  savedWord,
  screen,
} from './support/walk.ts';

const wall = (page: Page) => page.getByRole('region', { name: 'Paintings' });
const paintings = (page: Page) => wall(page).getByRole('listitem');
/** A photo that no compression makes small: 3 bytes a pixel. */
function noisePng(width: number, height: number): Buffer {
  let seed = 1;
  const next = (): number => {
    seed = (Math.imul(seed, 1_664_525) + 1_013_904_223) >>> 0;
    return seed >>> 24;
  };
  return png(width, height, () => [next(), next(), next()]);
}

const goOn = (page: Page) => page.getByRole('region', { name: 'Go on' });
const toPaintings = (page: Page) => page.getByRole('link', { name: 'Paintings' }).click();

test('paintings, their pictures and where they stand survive a reload', async ({ page }) => {
  await page.goto('./');
  await planFor(page, smallPhoto);
  await page.getByRole('link', { name: 'Values' }).click();
  await toPaintings(page);
  await lookAt(page, caseFile('patches-srgb-untagged.png'));
  await expect(page.getByTestId('sentence')).toBeVisible(); // looked at to the end
  await page.goto('./');
  for (let turn = 0; turn < 2; turn++) {
    await expect(paintings(page)).toHaveCount(2);
    await expect(paintings(page).nth(0)).toContainText('not looked at yet');
    await expect(paintings(page).nth(1)).toContainText('plan ready');
    const narrowest = () =>
      paintings(page)
        .locator('img')
        .evaluateAll((all) =>
          Math.min(...all.map((img) => (img as HTMLImageElement).naturalWidth)),
        );
    await expect.poll(narrowest).toBeGreaterThan(100); // both pictures are there
    await page.reload();
  }
});

test('taking a painting away asks first, can be undone, also after a reload', async ({ page }) => {
  await page.goto('./');
  await planOf(page, 'small photo');
  await page.goto('./');
  const before = await keptRows(page);
  const takeAway = paintings(page).getByRole('button', { name: /^Remove .+/ });
  await takeAway.click();
  await expect(paintings(page)).toContainText('photo and record too?');
  await paintings(page).getByRole('button', { name: 'Keep' }).click();
  await expect(paintings(page)).toHaveCount(1);

  await takeAway.click();
  await paintings(page).getByRole('button', { name: 'Remove', exact: true }).click();
  await expect(paintings(page)).toHaveCount(0);
  await expect(goOn(page)).toHaveCount(0);
  await page.reload();
  await wall(page).getByRole('button', { name: 'Bring it back' }).click();
  await expect(paintings(page)).toHaveCount(1);
  expect(await keptRows(page)).toEqual(before);
  await goOn(page).getByRole('button').click();
  await expect(screen(page, 'plan')).toBeVisible();
});

test.describe('with the app itself kept', () => {
  test.use({ serviceWorkers: 'allow' });
  test('A-STO-1: no room left is said, nothing is half kept, and it goes on once there is room', async ({
    page,
    context,
    host,
    guarded,
  }) => {
    await page.goto('./');
    await readyOffline(page); // the app itself is kept already
    guarded.allow(/404/); // a picture alone makes the browser look for a favicon.ico
    await page.goto('./icons/icon.svg');
    const devtools = await context.newCDPSession(page);
    const origin = new URL(host.url).origin; // with a slash at the end the quota would change nothing
    // Chromium remembers for a while how much room there was: cleared, it asks anew.
    await devtools.send('Storage.clearDataForOrigin', { origin, storageTypes: 'indexeddb' });
    const used = (await devtools.send('Storage.getUsageAndQuota', { origin })).usage;
    await devtools.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: used + 2_000_000 });
    await page.goto('./');
    await planOf(page, 'small photo');
    await page.goto('./');
    await expect(paintings(page)).toHaveCount(1);
    const before = await keptRows(page);
    const large = { name: 'large.png', mimeType: 'image/png', buffer: noisePng(1200, 900) };
    await photoInput(page).setInputFiles(large);
    await expect(screen(page, 'start').getByRole('alert')).toHaveText(
      /^Not saved: there is too little room.*Delete paintings you no longer need.*try again/,
    );
    expect(await keptRows(page)).toEqual(before);
    await goOn(page).getByRole('button').click(); // what was kept before can be read
    await expect(page.getByTestId('picture')).toBeVisible();

    await devtools.send('Storage.overrideQuotaForOrigin', { origin });
    await page.goto('./');
    await photoInput(page).setInputFiles(large);
    await expect(screen(page, 'look')).toBeVisible();
    expect((await keptRows(page)).paintings).toBe(2);
  });
});

test('A-STO-6: data cleared under the app is said; what is open is kept again, and what follows', async ({
  page,
  context,
  host,
}) => {
  await page.goto('./');
  await easelOfSmallPhoto(page);
  await goToStep(page, 4); // the first wash
  const devtools = await context.newCDPSession(page);
  const origin = new URL(host.url).origin;
  await devtools.send('Storage.clearDataForOrigin', { origin, storageTypes: 'indexeddb' });
  await afterTap(page);
  await page.getByRole('button', { name: 'Start' }).click();
  await expect(page.getByRole('complementary', { name: 'Notices' }).getByRole('alert')).toHaveText(
    /^The browser has cleared what was saved here\. .*saved again, but not its photo/,
  );
  await expect(page.getByRole('button', { name: 'Done' })).toBeVisible();
  await expect(savedWord(page)).toHaveText('saved');
  await page.reload();
  await expect(page.getByRole('button', { name: 'Done' })).toBeVisible(); // the very step
  await page.getByRole('link', { name: 'Plan' }).click();
  await page.goto('./');
  await lookAt(page, smallPhoto);
  expect((await keptRows(page)).paintings).toBe(2);
});

test('A-CAM-1: the page killed while a photo is being chosen: same step, right time', async ({
  page,
  context,
}) => {
  await page.goto('./');
  await easelOfSmallPhoto(page);
  const place = await goToDrying(page);
  const earliest = Date.now();
  const before = await clockSeconds(page);
  const latest = Date.now();
  await page.goto('./');
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Choose a photo' }).tap();
  await chooser;
  await page.close();

  const again = await context.newPage();
  await again.goto('./');
  await expect(paintings(again)).toHaveCount(1);
  await goOn(again).getByRole('button').tap();
  await expect(prompt(again)).toBeVisible();
  expect(await easelPlace(again)).toEqual(place);
  // As long as lay between the two looks at it, however slow the machine; a clock face is rounded.
  const [least, { most }] = [Date.now() - latest, await clockSeconds(again)];
  expect(before.most - most).toBeGreaterThanOrEqual(least / 1000 - 2);
  expect(before.most - most).toBeLessThanOrEqual((Date.now() - earliest) / 1000 + 2);
});

test('A-WRK-2: killed during a reading it starts calm, says so, and offers a smaller size', async ({
  page,
  context,
  guarded,
}) => {
  guarded.allow(/the page crashed/);
  await page.goto('./');
  await planOf(page, 'small photo');
  await page.goto('./');
  const devtools = await context.newCDPSession(page);
  await photoInput(page).setInputFiles(photograph('forest-stream.jpg'));
  await page.waitForFunction(() => localStorage.getItem('reading-under-way') !== null);
  void devtools.send('Page.crash').catch(() => undefined); // a page that died gives no answer
  await page.waitForEvent('crash');
  await page.close();

  const again = await context.newPage();
  await again.goto('./');
  await expect(paintings(again)).toHaveCount(2);
  await goOn(again).getByRole('button').click();
  await expect(screen(again, 'look').getByRole('alert')).toHaveText(
    /stopped last time.*too little memory.*Everything else is safe\..*smaller size/,
  );
  await again.waitForTimeout(1500);
  await expect(again.getByTestId('picture')).toHaveCount(0); // nothing is begun by itself
  await again.getByRole('link', { name: 'Back to the paintings' }).click();
  await paintings(again).nth(1).getByRole('button').first().click(); // the other one can be reached
  await expect(screen(again, 'plan').getByTestId('picture')).toBeVisible();
  await again.goto('./');
  await goOn(again).getByRole('button').click();
  await again.getByRole('button', { name: 'Look at it smaller' }).click();
  await expect(again.getByTestId('sentence')).toBeVisible();
  const longSide = await again
    .getByTestId('picture')
    .locator('canvas')
    .evaluateAll((all) => Math.max(...all.map((each) => (each as HTMLCanvasElement).width)));
  expect(longSide).toBe(800);
});

for (const locale of ['en-GB', 'de-DE', 'ar-EG'])
  test.describe(`typed in a browser set to ${locale}`, () => {
    test.use({ locale });
    test('A-LOC-1: 280,5 and 280.5 are the same width', async ({ page }) => {
      await page.goto('./');
      await planOf(page, 'small photo');
      await page.getByRole('link', { name: 'Values', exact: true }).click();
      await page.getByRole('link', { name: 'Sheet', exact: true }).click();
      await page.getByRole('button', { name: 'Other size' }).click();
      for (const typed of ['280,5', '280.5']) {
        await page.getByLabel('Width').fill('200');
        await page.getByLabel('Width').press('Enter');
        await expect(screen(page, 'sheet')).toContainText('200 mm wide');
        await page.getByLabel('Width').fill('');
        await page.getByLabel('Width').pressSequentially(typed);
        await page.getByLabel('Width').press('Enter');
        await expect(screen(page, 'sheet'), typed).toContainText('280.5 mm wide');
      }
      await page.getByLabel('Width').fill('28 cm');
      await page.getByLabel('Width').press('Enter');
      await expect(screen(page, 'sheet')).toContainText('280 mm wide');
      await page.getByLabel('Width').fill('a foot');
      await page.getByLabel('Width').press('Enter');
      await expect(page.getByRole('alert')).toHaveText(/can't be read.*millimetres/);
    });
  });

test('A-STO-9: where all storage is shut off it works for the session and says that nothing is kept', async ({
  page,
}) => {
  await page.addInitScript(() => {
    const refuse = {
      get(): never {
        throw new DOMException('The operation is insecure.', 'SecurityError');
      },
    };
    for (const name of ['indexedDB', 'localStorage', 'sessionStorage', 'caches'])
      Object.defineProperty(window, name, refuse);
  });
  await page.goto('./');
  await expect(page.getByRole('complementary', { name: 'Notices' }).getByRole('alert')).toHaveText(
    /nothing will be kept/,
  );
  await easelWith(page, smallPhoto);
  await pressOn(page);
  await pressOn(page);
  await expect.poll(async () => (await easelPlace(page)).n).toBe(3);
});

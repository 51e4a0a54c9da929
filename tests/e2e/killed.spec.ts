import type { Page } from '@playwright/test';
import type { StaticServer } from '../support/static-server.ts';
import { expect, test } from './support/app-page.ts';
import {
  afterTap,
  clockSeconds,
  easelPlace,
  goToDrying,
  goToStep,
  mainButton,
  pressOn,
} from './support/easel-walk.ts';
import type { Guard } from './support/guard.ts';
import { killBrowser, openKeptProfile } from './support/kept-profile.ts';
import { easelOf, easelOfSmallPhoto } from './support/planned-painting.ts';
import { glassOf } from './support/touch.ts';
import { keptRows, prompt, savedWord, screen } from './support/walk.ts';

interface OnDevice {
  readonly folder: string;
  readonly host: StaticServer;
  readonly guarded: Guard;
}

/** The app in a browser on the profile in the folder, at the time given or the real one. */
async function openApp({ folder, host, guarded }: OnDevice, time?: number) {
  const context = await openKeptProfile(folder);
  await guarded.watch(context);
  const page = context.pages()[0] ?? (await context.newPage());
  if (time !== undefined) await page.clock.install({ time });
  await page.goto(host.url);
  return { context, page };
}

const minutesAway = 10;

/** What is gone from a clock that showed `most` seconds since `at` is what went by on the reopened page's own. */
async function expectGone(reopened: Page, most: number, at: number): Promise<void> {
  const gone = most - (await clockSeconds(reopened)).most;
  const passed = ((await reopened.evaluate(() => Date.now())) - at) / 1000;
  expect(gone).toBeGreaterThanOrEqual(minutesAway * 60 - 2); // a clock face is rounded
  expect(gone).toBeLessThanOrEqual(passed + 2);
}

test('killed while she paints: same step, right time left, nothing lost', async ({
  folder,
  host,
  guarded,
}) => {
  const device = { folder, host, guarded };
  const { context, page } = await openApp(device);
  await easelOf(page, 'small example');
  await goToStep(page, 4); // the first wash
  await pressOn(page); // the wash begins
  const place = await easelPlace(page);
  const said = await prompt(page).innerText();
  const at = Date.now();
  const left = await clockSeconds(page);
  const rows = await keptRows(page);
  await killBrowser(context);

  const { context: again, page: reopened } = await openApp(device, at + minutesAway * 60_000);
  await expect(reopened.getByRole('region', { name: 'Go on' })).toContainText(
    `at the easel, step ${place.n} of ${place.of}`,
  );
  await reopened.getByRole('region', { name: 'Go on' }).getByRole('button').tap();
  await expect(prompt(reopened)).toHaveText(said);
  expect(await easelPlace(reopened)).toEqual(place);
  await expect(mainButton(reopened)).toHaveText('Done');
  // She went on painting while the app was away: 10 minutes are gone from the planned time.
  await expectGone(reopened, left.most, at);
  expect(await keptRows(reopened)).toEqual(rows);
  await again.close();
});

test('killed while the wash dries: the drying check stands and its time went on', async ({
  folder,
  host,
  guarded,
}) => {
  const device = { folder, host, guarded };
  const { context, page } = await openApp(device);
  await easelOfSmallPhoto(page);
  const place = await goToDrying(page);
  const at = Date.now();
  const left = await clockSeconds(page);
  await killBrowser(context);

  const { context: again, page: reopened } = await openApp(device, at + minutesAway * 60_000);
  await reopened.getByRole('region', { name: 'Go on' }).getByRole('button').tap();
  await expect(mainButton(reopened)).toHaveText('It is bone dry');
  expect(await easelPlace(reopened)).toEqual(place);
  await expectGone(reopened, left.most, at);
  await again.close();
});

test('killed in the very moment the screen says saved: what was said to be saved is there', async ({
  folder,
  host,
  guarded,
}) => {
  const device = { folder, host, guarded };
  const { context, page } = await openApp(device);
  await easelOfSmallPhoto(page);
  await goToStep(page, 2);
  await pressOn(page);
  await afterTap(page);
  await page.evaluate(() => {
    const word = document.querySelector('main header [role=status]');
    const words: string[] = [];
    new MutationObserver(() => words.push(word?.textContent ?? '')).observe(word as Node, {
      characterData: true,
      childList: true,
      subtree: true,
    });
    Object.assign(window, { words });
  });
  await (await glassOf(page)).press(mainButton(page));
  await page.waitForFunction(() => (Reflect.get(window, 'words') as string[]).at(-1) === 'saved');
  expect(await page.evaluate(() => Reflect.get(window, 'words'))).toEqual(['saving', 'saved']);
  await killBrowser(context);

  const { context: again, page: reopened } = await openApp(device);
  await reopened.getByRole('region', { name: 'Go on' }).getByRole('button').tap();
  await expect(screen(reopened, 'easel').getByRole('heading', { level: 1 })).toHaveText(/^4 of /);
  await again.close();
});

test('a reload right after a tap keeps all that was saved and breaks nothing', async ({ page }) => {
  await page.goto('./');
  await easelOfSmallPhoto(page);
  await goToStep(page, 2);
  for (let turn = 0; turn < 4; turn++) {
    await afterTap(page);
    const before = await easelPlace(page);
    const word = await mainButton(page).innerText();
    // Tapped and left within one turn of the page: no transaction can be done yet.
    await page.evaluate((name) => {
      const button = [...document.querySelectorAll('main button')].find(
        (each) => each.textContent === name,
      ) as HTMLElement;
      button.click();
      location.reload();
    }, word);
    await expect(prompt(page)).toBeVisible();
    await expect(savedWord(page)).toHaveText('saved');
    const after = await easelPlace(page);
    const wordAfter = await mainButton(page).innerText();
    const kept = word === 'Start' ? wordAfter !== 'Start' : after.n === before.n + 1;
    const asBefore = after.n === before.n && wordAfter === word;
    expect(kept || asBefore, `${word} at ${before.n}: ${wordAfter} at ${after.n}`).toBe(true);
    await pressOn(page);
    const acknowledged = await easelPlace(page);
    const acknowledgedWord = await mainButton(page).innerText();
    await page.reload();
    await expect(prompt(page)).toBeVisible();
    expect(await easelPlace(page)).toEqual(acknowledged);
    await expect(mainButton(page)).toHaveText(acknowledgedWord);
  }
});

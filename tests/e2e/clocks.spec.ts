import type { Page } from '@playwright/test';
import { expect, test } from './support/app-page.ts';
import {
  clockSeconds,
  driveClock,
  easelButton,
  easelPlace,
  goToDrying,
  goToStep,
  mainButton,
  pressOn,
} from './support/easel-walk.ts';
import { easelOfSmallPhoto } from './support/planned-painting.ts';
import { readyOffline } from './support/ready-offline.ts';
import { releaseFolder } from './support/release-folder.ts';
import { prompt, screen } from './support/walk.ts';

const minute = 60;
const clock = (page: Page) => page.getByTestId('clock');
const pageTime = (page: Page): Promise<number> => page.evaluate(() => Date.now());
/** The device wakes or the tab comes back: the page is told so. */
const comeBack = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
/** Moves the date alone; timers do not fire and the monotonic clock goes on as it was. */
const moveDate = async (page: Page, minutes: number): Promise<void> =>
  page.clock.setSystemTime((await pageTime(page)) + minutes * minute * 1000);

/** Seconds gone by on the page's own clock: no machine is too slow for what is held against them. */
const secondsSince = async (page: Page, at: number): Promise<number> =>
  ((await pageTime(page)) - at) / 1000;
/** A clock face shows whole seconds and may be one behind. */
const roundedSeconds = 2;

async function dryingEasel(page: Page): Promise<void> {
  await driveClock(page);
  await page.goto('./');
  await easelOfSmallPhoto(page);
  await goToDrying(page);
}

/** The time gone by on the drying clock since `before`, in seconds. */
const goneSince = async (page: Page, before: { most: number }): Promise<number> =>
  before.most - (await clockSeconds(page)).most;

test('A-TIM-1, A-TIM-4: time slept through counts, at once on coming back', async ({ page }) => {
  await dryingEasel(page);
  const at = await pageTime(page);
  const before = await clockSeconds(page);
  await moveDate(page, 12);
  await comeBack(page);
  await expect.poll(() => goneSince(page, before)).toBeGreaterThanOrEqual(12 * minute - 1);
  const gone = await goneSince(page, before);
  expect(gone).toBeLessThanOrEqual((await secondsSince(page, at)) + roundedSeconds);
});

test('A-TIM-2: an end passed while away is said as such, never a negative figure', async ({
  page,
}) => {
  await dryingEasel(page);
  const { most } = await clockSeconds(page);
  await moveDate(page, most / minute + 6);
  await comeBack(page);
  await expect(clock(page)).toContainText('over by 6 min');
  await expect(clock(page)).toContainText('Look now.');
  expect(await clockSeconds(page)).toEqual({ low: 0, most: 0 });
  expect(await clock(page).innerText()).not.toMatch(/[-−–]\s?\d/);
  expect(await mainButton(page).innerText()).toBe('It is bone dry'); // it does not start anew
  await page.reload();
  await expect(clock(page)).toContainText('over by 6 min');
});

test('A-TIM-3: a clock set back an hour makes no wait longer, before and after a reload', async ({
  page,
}) => {
  await dryingEasel(page);
  await page.clock.fastForward(5 * minute * 1000);
  const monotonic = () => page.evaluate(() => performance.now() / 1000);
  const start = await monotonic();
  const before = await clockSeconds(page);
  await moveDate(page, -60);
  await page.clock.fastForward(2000);
  const gone = await goneSince(page, before);
  expect(gone).toBeGreaterThanOrEqual(0);
  expect(gone).toBeLessThanOrEqual((await monotonic()) - start + roundedSeconds);
  const at = await pageTime(page);
  await page.reload();
  await expect(clock(page)).toBeVisible();
  const more = (await goneSince(page, before)) - gone;
  expect(more).toBeGreaterThanOrEqual(-roundedSeconds);
  expect(more).toBeLessThanOrEqual((await secondsSince(page, at)) + roundedSeconds);
  await pressOn(page);
  await page.goto('./#/');
  await page.getByRole('region', { name: 'Go on' }).getByRole('button').click();
  await expect(prompt(page)).toBeVisible();
});

test.describe('over the change to summer time', () => {
  test.use({ timezoneId: 'Europe/Berlin' });
  test('A-TIM-5: 30 minutes stay 30 minutes', async ({ page }) => {
    await driveClock(page, new Date('2031-03-30T01:50:00+01:00'));
    await page.goto('./');
    await easelOfSmallPhoto(page);
    await goToDrying(page);
    const at = await pageTime(page);
    const before = await clockSeconds(page);
    await page.clock.fastForward(30 * minute * 1000);
    expect(await page.evaluate(() => new Date().getHours())).toBe(3);
    await expect.poll(() => goneSince(page, before)).toBeGreaterThanOrEqual(30 * minute - 1);
    const noMoreThanPassed = async (): Promise<void> => {
      const gone = await goneSince(page, before);
      expect(gone).toBeLessThanOrEqual((await secondsSince(page, at)) + roundedSeconds);
    };
    await noMoreThanPassed();
    await page.reload();
    await expect(clock(page)).toBeVisible();
    await noMoreThanPassed();
  });
});

test('A-TIM-13: the end of a step that was left says nothing in the next one', async ({ page }) => {
  await driveClock(page);
  await page.goto('./');
  await easelOfSmallPhoto(page);
  await goToStep(page, 4);
  await pressOn(page); // the first wash begins
  const { most } = await clockSeconds(page);
  await page.clock.fastForward(minute * 1000);
  await pressOn(page); // done after a minute
  await page.clock.fastForward(most * 1000); // its end passes
  await expect(screen(page, 'easel')).not.toContainText(/over by|just over/);
  await pressOn(page); // dry
  await pressOn(page); // the next begins: with its whole time
  await expect(clock(page)).not.toContainText(/over/);
  expect((await clockSeconds(page)).most).toBeGreaterThan(minute);
});

test('A-TIM-14: twenty taps on Pause make time run no faster', async ({ page }) => {
  await driveClock(page);
  await page.goto('./');
  await easelOfSmallPhoto(page);
  await goToStep(page, 4); // the first wash
  await pressOn(page);
  const at = await pageTime(page);
  const before = await clockSeconds(page);
  for (let tap = 0; tap < 20; tap++) {
    const pausing = await easelButton(page, 'Pause').isVisible();
    await (pausing ? easelButton(page, 'Pause') : mainButton(page)).click();
    await page.clock.runFor(100);
  }
  if (await easelButton(page, 'Go on').isVisible()) await pressOn(page);
  await page.clock.fastForward(minute * 1000);
  await expect(clock(page)).toHaveAttribute('aria-label', 'Time for this step');
  const gone = await goneSince(page, before);
  expect(gone).toBeGreaterThanOrEqual(minute - 2);
  expect(gone).toBeLessThanOrEqual((await secondsSince(page, at)) + roundedSeconds);
});

test('A-TCH-4: two clicks 60 ms apart are one, on every kind of step', async ({ page }) => {
  await driveClock(page);
  await page.goto('./');
  await easelOfSmallPhoto(page);
  for (;;) {
    const before = await easelPlace(page);
    const word = await mainButton(page).innerText();
    // Paused, so that the two are 60 ms apart however slow the machine is.
    await page.clock.pauseAt((await pageTime(page)) + 1000);
    // The second click falls where the first was, on whatever stands there by then.
    const box = await mainButton(page).boundingBox();
    if (!box) throw new Error('The button is not there.');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.click(x, y);
    await page.clock.runFor(60);
    await page.mouse.click(x, y);
    await page.clock.runFor(100);
    await page.clock.resume();
    const after = await easelPlace(page);
    const wordAfter = await mainButton(page).innerText();
    if (word === 'Start') {
      expect([after.n, wordAfter], before.title).toEqual([before.n, 'Done']);
      continue;
    }
    expect(after.n, before.title).toBe(before.n + 1);
    // The next step is not begun by itself; those of getting ready have no beginning.
    if (after.n > 3) expect(wordAfter, before.title).not.toBe('Done');
    if (wordAfter !== 'It is bone dry') continue;
    await expect(clock(page), 'the wash is not taken for dry').toBeVisible();
    expect((await clockSeconds(page)).most).toBeGreaterThan(minute);
    if (after.title === 'Drying check' && after.n > 6) return;
  }
});

test.describe('with a service worker', () => {
  test.use({ serviceWorkers: 'allow' });
  test('a newer version is not offered during a session, but after it', async ({ page, host }) => {
    await page.goto('./');
    await readyOffline(page);
    await easelOfSmallPhoto(page);
    await pressOn(page);
    host.serve(releaseFolder('v2'));
    // The browser itself has found it; the app still says nothing.
    await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
    const waits = () =>
      page.evaluate(async () => !!(await navigator.serviceWorker.getRegistration())?.waiting);
    await expect.poll(waits).toBe(true);
    for (let look = 0; look < 3; look++) {
      await comeBack(page);
      await expect(page.getByTestId('update')).toHaveCount(0);
    }
    await page.goto('./#/');
    await page.reload();
    await comeBack(page);
    await expect(page.getByTestId('update')).toBeVisible();
  });
});

import type { Page } from '@playwright/test';
import { expect, test } from '../e2e/support/app-page.ts';
import { photograph } from '../e2e/support/fixture-file.ts';
import { photoInput, picture, toTheEasel, toTheWashes } from '../e2e/support/walk.ts';
import { photoOf12Megapixels } from '../support/reference/large-photo.ts';

// What she feels of the time it takes, by the clock of an idle machine: printed, not held against a limit.

const rounds = 5;
const slower = 4;

/** What the page notes of itself, ms since it was loaded. */
interface Noted {
  /** Tasks of the main thread over 50 ms (W3C, Long Tasks API). */
  readonly tasks: { readonly from: number; readonly took: number }[];
  /** The frame in which her picture first stood grey was painted; missing before. */
  greyAt?: number;
}

const noteInPage = (): void => {
  const noted: Noted = { tasks: [] };
  Object.assign(window, { noted });
  new PerformanceObserver((list) => {
    for (const { startTime, duration } of list.getEntries())
      noted.tasks.push({ from: startTime, took: duration });
  }).observe({ type: 'longtask' });
  new MutationObserver((_, observer) => {
    if (!document.querySelector('[data-testid=picture][data-show=grey]')) return;
    observer.disconnect();
    const painted = new MessageChannel();
    painted.port1.onmessage = () => {
      noted.greyAt = performance.now();
    };
    requestAnimationFrame(() => painted.port2.postMessage(null));
  }).observe(document, { attributes: true, childList: true, subtree: true });
};

const noted = (page: Page): Promise<Noted> =>
  page.evaluate(() => Reflect.get(window, 'noted') as Noted);
const clock = (page: Page): Promise<number> => page.evaluate(() => performance.now());
const middle = (list: readonly number[]): string =>
  ([...list].sort((a, b) => a - b)[Math.floor(list.length / 2)] ?? 0).toFixed(0);
const inWords = (list: readonly number[]): string =>
  `${middle(list)} ms (${list.map((ms) => ms.toFixed(0)).join(', ')})`;

test('a photo of 12 megapixels: its greys, its reading, its plan, and how long the page is held up', async ({
  browser,
  host,
}) => {
  const photo = await photoOf12Megapixels(photograph('mountain-snow.jpg'));
  const times = { decode: [] as number[], grey: [] as number[], reading: [] as number[] };
  const plan: number[] = [];
  const longest: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const context = await browser.newContext();
    const page = await context.newPage();
    await page.addInitScript(noteInPage);
    await page.goto(host.url);
    await page.waitForTimeout(1000);
    // The moment the photo arrives, and how long this browser takes to decode it alone, once it is done with the rest.
    await photoInput(page).evaluate((input) =>
      input.addEventListener('change', () => Object.assign(window, { cameAt: performance.now() }), {
        capture: true,
      }),
    );
    await photoInput(page).setInputFiles(photo);
    await expect(picture(page)).toHaveAttribute('data-show', 'grey');
    await expect(page.getByTestId('sentence')).toBeVisible();
    const came = await page.evaluate(() => Reflect.get(window, 'cameAt') as number);
    times.reading.push((await clock(page)) - came);
    await toTheWashes(page).click();
    await expect(toTheEasel(page)).toBeVisible();
    plan.push((await clock(page)) - came);
    const { tasks, greyAt = Number.NaN } = await noted(page);
    times.grey.push(greyAt - came);
    longest.push(Math.max(0, ...tasks.filter(({ from }) => from >= came).map(({ took }) => took)));
    times.decode.push(
      await page.evaluate(
        async (bytes) => {
          const blob = new Blob([new Uint8Array(bytes)], { type: 'image/jpeg' });
          const since = performance.now();
          const bitmap = await createImageBitmap(blob);
          new OffscreenCanvas(1, 1).getContext('2d')?.drawImage(bitmap, 0, 0, 1, 1);
          return performance.now() - since;
        },
        [...photo.buffer],
      ),
    );
    await context.close();
  }
  for (const [what, list] of Object.entries({ ...times, plan, 'longest task': longest }))
    console.log(`12 megapixels, ${what}: ${inWords(list)}`);
  expect(plan).toHaveLength(rounds);
});

test('a tap on the picture makes it grey within a frame or two, four times slower', async ({
  page,
}) => {
  await page.goto('./');
  await photoInput(page).setInputFiles(photograph('mountain-snow.jpg'));
  await expect(page.getByTestId('sentence')).toBeVisible();
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: slower });
  const taps: number[] = [];
  for (let n = 0; n < 2 * rounds; n++) {
    const wasShown = await picture(page).getAttribute('data-show');
    const waiting = page.evaluate(
      (before) =>
        new Promise<number>((done) => {
          let pressed = 0;
          addEventListener('pointerup', () => (pressed = performance.now()), {
            once: true,
            capture: true,
          });
          new MutationObserver((_, observer) => {
            const shown = document
              .querySelector('[data-testid=picture]')
              ?.getAttribute('data-show');
            if (shown === before || pressed === 0) return;
            observer.disconnect();
            const painted = new MessageChannel();
            painted.port1.onmessage = () => done(performance.now() - pressed);
            requestAnimationFrame(() => painted.port2.postMessage(null));
          }).observe(document, { attributes: true, subtree: true });
        }),
      wasShown,
    );
    await picture(page).click();
    taps.push(await waiting);
    await page.waitForTimeout(400);
  }
  console.log(`a tap to grey and back, ${slower} times slower: ${inWords(taps)}`);
  expect(taps).toHaveLength(2 * rounds);
});

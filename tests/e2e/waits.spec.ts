import type { Page } from '@playwright/test';
import { photoOf12Megapixels } from '../support/reference/large-photo.ts';
import { expect, test } from './support/app-page.ts';
import { photograph } from './support/fixture-file.ts';
import { example, photoInput, picture, toTheEasel, toTheWashes } from './support/walk.ts';

/** Notes in the page itself whether its greys ever stood before the reading was there. */
const watchOrder = (page: Page): Promise<void> =>
  page.evaluate(() => {
    new MutationObserver(() => {
      const grey = document.querySelector('[data-testid=picture][data-show=grey]');
      if (grey && !document.querySelector('[data-testid=sentence]'))
        Object.assign(window, { greyCameFirst: true });
    }).observe(document.body, { attributes: true, childList: true, subtree: true });
  });
const greyCameFirst = (page: Page): Promise<boolean> =>
  page.evaluate(() => 'greyCameFirst' in window);

/** What is measured is logged; what is held is the order, which does not depend on the machine. */
async function stopwatch(page: Page, begin: () => Promise<void>): Promise<Record<string, number>> {
  const began = Date.now();
  const times: Record<string, number> = {};
  await watchOrder(page);
  await begin();
  await expect(page.getByRole('progressbar').or(picture(page))).toBeVisible();
  times.answer = Date.now() - began;
  await expect(picture(page)).toHaveAttribute('data-show', 'grey');
  times.grey = Date.now() - began;
  await expect(toTheWashes(page)).toBeVisible();
  await expect(page.getByTestId('sentence')).toBeVisible();
  times.reading = Date.now() - began;
  await toTheWashes(page).click();
  await expect(toTheEasel(page)).toBeVisible();
  times.plan = Date.now() - began;
  return times;
}

const said = (times: Record<string, number>): string =>
  Object.entries(times)
    .map(([what, ms]) => `${what} ${ms} ms`)
    .join(', ');

test.describe('for who has just begun', () => {
  test.use({ box: 'all', exampleSize: 'whole', serviceWorkers: 'allow' });
  test('the example: something to see at once, then the plan', async ({ page }) => {
    await page.goto('./');
    await expect(example(page)).toBeVisible();
    const times = await stopwatch(page, () => example(page).tap());
    console.log(`from the tap on the example: ${said(times)}`);
    expect(await greyCameFirst(page)).toBe(true); // she looks while it is read
  });
});

test('a photo of 12 megapixels: progress at once, its greys soon, and it is read', async ({
  page,
}) => {
  const photo = await photoOf12Megapixels(photograph('mountain-snow.jpg'));
  await page.goto('./');
  const times = await stopwatch(page, () => photoInput(page).setInputFiles(photo));
  console.log(`a photo of 12 megapixels (${photo.buffer.length} bytes): ${said(times)}`);
  expect(await greyCameFirst(page)).toBe(true);
});

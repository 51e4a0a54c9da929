import type { Page } from '@playwright/test';
import sharp from 'sharp';
import { expect, test } from './support/app-page.ts';
import { photograph } from './support/fixture-file.ts';
import { example, photoInput, picture, toTheEasel, toTheWashes } from './support/walk.ts';

test.use({ serviceWorkers: 'allow' });

/** What is measured is logged; what is held is the order, which does not depend on the machine. */
async function stopwatch(page: Page, begin: () => Promise<void>): Promise<Record<string, number>> {
  const began = Date.now();
  const times: Record<string, number> = {};
  await begin();
  await expect(page.getByRole('progressbar').or(picture(page))).toBeVisible();
  times.answer = Date.now() - began;
  await expect(picture(page)).toHaveAttribute('data-show', 'grey');
  times.grey = Date.now() - began;
  await expect(toTheWashes(page)).toBeVisible({ timeout: 30_000 });
  await expect(page.getByTestId('sentence')).toBeVisible({ timeout: 30_000 });
  times.reading = Date.now() - began;
  await toTheWashes(page).click();
  await expect(toTheEasel(page)).toBeVisible({ timeout: 30_000 });
  times.plan = Date.now() - began;
  return times;
}

const said = (times: Record<string, number>): string =>
  Object.entries(times)
    .map(([what, ms]) => `${what} ${ms} ms`)
    .join(', ');

test.describe('for who has just begun', () => {
  test.use({ box: 'all' });
  test('the example: something to see at once, then the plan', async ({ page }) => {
    await page.goto('./');
    await expect(example(page)).toBeVisible();
    await page.waitForTimeout(2500); // a person looks first; the paints are read meanwhile
    const times = await stopwatch(page, () => example(page).tap());
    console.log(`from the tap on the example: ${said(times)}`);
    expect(times.grey).toBeLessThan(times.reading ?? 0); // grey at once: she looks while it is read
  });
});

test('a photo of 12 megapixels: progress at once, its greys soon, and it is read', async ({
  page,
}) => {
  test.setTimeout(60_000);
  const buffer = await sharp(photograph('mountain-snow.jpg'))
    .resize(4000, 3000, { fit: 'cover' })
    .jpeg({ quality: 90 })
    .toBuffer();
  await page.goto('./');
  await page.waitForTimeout(1500);
  const photo = { name: 'twelve.jpg', mimeType: 'image/jpeg', buffer };
  const times = await stopwatch(page, () => photoInput(page).setInputFiles(photo));
  console.log(`a photo of 12 megapixels (${buffer.length} bytes): ${said(times)}`);
  expect(times.grey).toBeLessThan(times.reading ?? 0);
});

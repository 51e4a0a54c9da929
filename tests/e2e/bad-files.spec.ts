import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { expect, test } from './support/app-page.ts';
import { caseFile, fileNamed, smallExample, smallPhoto } from './support/fixture-file.ts';
import { keptRows, lookAt, photoInput, screen } from './support/walk.ts';

const paintings = (page: Page) =>
  page.getByRole('region', { name: 'Paintings' }).getByRole('listitem');

/** Sentence: cause, then what to do next. No exception's name. */
const refusals = [
  { id: 'A-FMT-6', file: 'text-named.jpg', says: /not a picture.*Choose a photo/ },
  { id: 'A-FMT-5', file: 'zero-bytes.jpg', says: /file is empty.*choose another/ },
  { id: 'A-FMT-3', file: 'truncated-60-percent.jpg', says: /incomplete.*choose it anew/ },
  { id: 'A-FMT-4', file: 'truncated-50-percent.png', says: /incomplete.*choose it anew/ },
  { id: 'A-FMT-1', file: 'picture.heic', says: /HEIC photo.*JPEG.*choose it again/ },
  { id: 'A-FMT-8', file: 'script.svg', says: /SVG.*JPEG or PNG.*choose it again/ },
  { id: 'A-BIG-9', file: 'bomb-16000x16000-1bit.png', says: /too large.*smaller copy/ },
];

test('a file that is no photo is refused in a sentence, and the rest is left alone', async ({
  page,
}) => {
  await page.goto('./');
  await lookAt(page, smallPhoto);
  await page.getByRole('link', { name: 'Paintings' }).click();
  await expect(paintings(page)).toHaveCount(1);
  const before = await keptRows(page);
  for (const { id, file, says } of refusals) {
    await test.step(`${id} ${file}`, async () => {
      await photoInput(page).setInputFiles(caseFile(file));
      const alert = screen(page, 'start').getByRole('alert');
      await expect(alert, id).toHaveText(says);
      expect(await alert.innerText(), id).not.toMatch(
        /\b\w*(Error|Exception)\b|undefined|\[object/,
      );
      await expect(screen(page, 'start'), id).toBeVisible();
      await expect.poll(() => keptRows(page), id).toEqual(before);
      await expect(paintings(page), id).toHaveCount(1);
      // So that the very same file can be chosen again (A-CAM-3).
      expect(await photoInput(page).inputValue(), id).toBe('');
    });
  }
});

test('A-FMT-11: after bad files the next good one works at once, the old words are gone', async ({
  page,
}) => {
  await page.goto('./');
  for (const file of ['zero-bytes.jpg', 'text-named.jpg', 'picture.heic']) {
    await photoInput(page).setInputFiles(caseFile(file));
    await expect(screen(page, 'start').getByRole('alert')).toBeVisible();
  }
  await lookAt(page, smallPhoto);
  await expect(page.getByRole('alert')).toHaveCount(0);
  await page.getByRole('link', { name: 'Paintings' }).click();
  await expect(paintings(page)).toHaveCount(1);
  await expect(page.getByRole('alert')).toHaveCount(0);
  await lookAt(page, smallPhoto); // the same photo once more
  await page.getByRole('link', { name: 'Paintings' }).click();
  await expect(paintings(page)).toHaveCount(2);
});

test('A-CAM-5: of two photos chosen one after the other the second counts', async ({ page }) => {
  await page.goto('./');
  const photos = [
    { name: 'first.jpg', bytes: readFileSync(caseFile('panorama-20000x500.jpg'), 'base64') },
    { name: 'second.jpg', bytes: readFileSync(smallPhoto, 'base64') },
  ];
  await photoInput(page).evaluate((input, photos) => {
    for (const { name, bytes } of photos) {
      const given = new DataTransfer();
      const buffer = Uint8Array.from(atob(bytes), (sign) => sign.charCodeAt(0));
      given.items.add(new File([buffer], name, { type: 'image/jpeg' }));
      (input as HTMLInputElement).files = given.files;
      input.dispatchEvent(new Event('change', { bubbles: true }));
    }
  }, photos);
  await expect(screen(page, 'look')).toBeVisible();
  await page.getByRole('link', { name: 'Paintings' }).click();
  await expect(page.getByRole('region', { name: 'Go on' })).toContainText('second');
  await expect(paintings(page)).toHaveCount(1);
  expect((await keptRows(page)).photos).toBe(1);
});

test('a photo with a hole in its file is read, and says that part of it is missing', async ({
  page,
}) => {
  const missing = screen(page, 'look').getByText(
    /^Part of this photo is missing: the file is damaged/,
  );
  await page.goto('./');
  const photo = await smallExample();
  await lookAt(page, photo);
  await expect(missing).toHaveCount(0);
  await page.getByRole('link', { name: 'Paintings' }).click();
  const holed = Buffer.from(photo.buffer);
  holed.fill(0, 20_000, 22_000); // as of a card that has lost a sector
  await lookAt(page, { ...photo, buffer: holed });
  await expect(missing).toBeVisible();
  await expect(missing).toContainText(
    'Copy the photo again from where it came, or crop that part away.',
  );
});

const oddNames = ['🎨 plein-air 👩🏽‍🎨 n°1', '<img src=x onerror=window.__pwned=3>'];

test('A-LOC-4: emoji and markup in file names are shown whole, as text', async ({ page }) => {
  await page.goto('./');
  for (const name of oddNames) {
    await lookAt(page, fileNamed(`${name}.jpg`, smallPhoto));
    await page.getByRole('link', { name: 'Paintings' }).click();
    await expect(page.getByRole('region', { name: 'Go on' })).toContainText(`Continue ${name}`);
  }
  const titles = page.getByRole('region', { name: 'Paintings' }).locator('li button > strong');
  await expect(titles).toHaveText([...oddNames].reverse());
  expect(await page.evaluate(() => '__pwned' in window)).toBe(false);
  await expect(page.locator('img[src="x"]')).toHaveCount(0);
});

import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { expect, test } from './support/app-page.ts';
import { pressOn } from './support/easel-walk.ts';
import { smallPhoto } from './support/fixture-file.ts';
import { planOf } from './support/planned-painting.ts';
import { readyOffline } from './support/ready-offline.ts';
import {
  example,
  keptRows,
  prompt,
  savedWord,
  screen,
  toTheEasel,
  toTheWashes,
} from './support/walk.ts';

const copies = (page: Page) => screen(page, 'copies');

async function toCopies(page: Page): Promise<void> {
  await page.goto('./#/about');
  await page.getByRole('link', { name: 'Keep a copy, bring one back' }).click();
  await expect(copies(page)).toBeVisible();
}

/** What a browser does when its site data are cleared: the database goes. */
const clearAll = (page: Page): Promise<void> =>
  page.evaluate(
    () =>
      new Promise<void>((resolve, reject) => {
        const request = indexedDB.deleteDatabase('firstwash');
        request.onsuccess = () => resolve();
        request.onerror = () => reject(request.error);
      }),
  );

test('a copy of the example, its plan, its session and the box comes back after all was cleared', async ({
  page,
  folder,
}) => {
  // No picker here, so that the copy is a download; the picker has its own test.
  await page.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
  await page.goto('./');
  await planOf(page, 'small example');
  const title = await page.locator('h2').first().innerText();
  await toTheEasel(page).tap();
  await pressOn(page);
  await expect(savedWord(page)).toHaveText('saved');
  const step = await prompt(page).innerText();
  const before = await keptRows(page);

  await toCopies(page);
  await page.getByRole('button', { name: 'Make the copy' }).tap();
  await expect(copies(page).getByText(/1 painting, .* read through once and whole/)).toBeVisible();
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save it as a file' }).tap();
  const download = await coming;
  expect(download.suggestedFilename()).toMatch(/^Firstwash \d{4}-\d\d-\d\d\.zip$/);
  const file = `${folder}/${download.suggestedFilename()}`;
  await download.saveAs(file);
  await expect(copies(page).getByText(/^Saved\./)).toBeVisible();

  await clearAll(page);
  await page.goto('about:blank');
  await page.goto('./');
  await expect(example(page)).toBeVisible();
  await expect(page.getByRole('region', { name: 'Go on' })).toHaveCount(0);

  await toCopies(page);
  await page.getByLabel('Copy to bring back').setInputFiles(file);
  await expect(copies(page).getByText(/not here yet, comes back/)).toBeVisible();
  expect((await keptRows(page)).paintings).toBe(0); // looked through, nothing done
  await page.getByRole('button', { name: 'Bring it back' }).tap();
  await page.getByRole('link', { name: 'To your paintings' }).tap();
  const after = await keptRows(page);
  expect(after).toEqual({ ...before, settings: after.settings });
  await expect(page.getByRole('region', { name: 'Go on' })).toContainText('at the easel');
  await page.getByRole('region', { name: 'Go on' }).getByRole('button').tap();
  await expect(prompt(page)).toHaveText(step);
  await page.goto('./#/box');
  await expect(page.getByText(/8 paints ticked/)).toBeVisible();
  expect(title).not.toBe('');
});

test('the copy goes to the place she picks, or to another app, whichever this browser has', async ({
  page,
}) => {
  await page.addInitScript(() => {
    const heard: string[] = [];
    Object.assign(window, {
      heard,
      showSaveFilePicker: async ({ suggestedName }: { suggestedName: string }) => ({
        createWritable: async () => {
          let bytes = 0;
          return new WritableStream<Uint8Array>({
            write: (chunk) => {
              bytes += chunk.length;
            },
            close: () => void heard.push(`${suggestedName} ${bytes > 1000}`),
          });
        },
      }),
    });
    Object.assign(navigator, {
      canShare: () => true,
      share: async ({ files }: { files: File[] }) => void heard.push(`shared ${files[0]?.type}`),
    });
  });
  await page.goto('./');
  await planOf(page, 'small photo');
  await toCopies(page);
  await page.getByRole('combobox', { name: 'What goes into it' }).selectOption({ index: 2 });
  await page.getByRole('button', { name: 'Make the copy' }).tap();
  await page.getByRole('button', { name: 'Hand it on' }).tap();
  await expect(copies(page).getByText('Handed on.')).toBeVisible();
  await page.getByRole('button', { name: 'Save it as a file' }).tap();
  await expect(copies(page).getByText(/^Saved\./)).toBeVisible();
  const heard = await page.evaluate(() => (window as unknown as { heard: string[] }).heard);
  expect(heard[0]).toBe('shared application/zip');
  expect(heard[1]).toMatch(/^Firstwash .+ \d{4}-\d\d-\d\d\.zip true$/);
});

test('a file that is no copy, or a copy cut short, is said in a sentence', async ({ page }) => {
  await toCopies(page);
  const bring = page.getByLabel('Copy to bring back');
  await bring.setInputFiles({
    name: 'a.zip',
    mimeType: 'application/zip',
    buffer: Buffer.from('x'),
  });
  await expect(copies(page).getByRole('alert')).toHaveText(/no copy made by Firstwash/);
});

test.describe('installed', () => {
  test.use({ serviceWorkers: 'allow' });
  test('photos and copies handed to the installed app, or opened with it, find their way', async ({
    page,
    host,
  }) => {
    await page.goto('./');
    await readyOffline(page);
    await host.close(); // the worker takes them, no host
    const bytes = [...readFileSync(smallPhoto)];
    await page.evaluate(async (bytes) => {
      const form = new FormData();
      form.append(
        'files',
        new File([new Uint8Array(bytes)], 'snow on a hill.jpg', { type: 'image/jpeg' }),
      );
      await fetch('./share', { method: 'POST', body: form });
    }, bytes);
    await page.goto('about:blank');
    await page.goto('./');
    await expect(toTheWashes(page)).toBeVisible();
    await page.goto('./');
    await expect(page.getByRole('region', { name: 'Go on' })).toContainText('snow on a hill');

    await page.addInitScript(() => {
      const getFile = async () => new File(['PK, and no more'], 'anything', { type: 'image/png' });
      Object.defineProperty(window, 'launchQueue', {
        value: { setConsumer: (take: (launch: object) => void) => take({ files: [{ getFile }] }) },
      });
    });
    await page.goto('about:blank');
    await page.goto('./');
    await expect(copies(page).getByRole('alert')).toHaveText(/This copy is damaged/);
  });
});

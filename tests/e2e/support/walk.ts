import { expect, type Locator, type Page } from '@playwright/test';

export type ScreenName =
  | 'start'
  | 'about'
  | 'copies'
  | 'camera'
  | 'choose'
  | 'look'
  | 'subject'
  | 'whites'
  | 'edges'
  | 'colours'
  | 'changes'
  | 'hues'
  | 'chart'
  | 'drawing'
  | 'plan-page'
  | 'box'
  | 'measure'
  | 'mix-page'
  | 'sheet'
  | 'paints'
  | 'plan'
  | 'easel'
  | 'record'
  | 'compare';

export const screen = (page: Page, name: ScreenName): Locator =>
  page.locator(`main[data-screen="${name}"]`);

export const example = (page: Page): Locator => page.getByRole('button', { name: /The example/ });
export const photoInput = (page: Page): Locator => page.getByLabel('Reference photo');
export const toTheWashes = (page: Page): Locator =>
  page.getByRole('link', { name: 'Show me the washes' });
export const toTheEasel = (page: Page): Locator => page.getByRole('link', { name: 'To the easel' });
export const picture = (page: Page): Locator => page.getByTestId('picture');
export const prompt = (page: Page): Locator => page.getByTestId('prompt');
/** The easel's word on keeping: saved, saving, not saved. */
export const savedWord = (page: Page): Locator =>
  screen(page, 'easel').locator('header').getByRole('status');

type PhotoFile = Parameters<Locator['setInputFiles']>[0];

/** From the first screen, a photo through the file input, to the value study. */
export async function lookAt(page: Page, photo: PhotoFile): Promise<void> {
  await photoInput(page).setInputFiles(photo);
  await expect(toTheWashes(page)).toBeVisible();
}

export async function planFor(page: Page, photo: PhotoFile): Promise<void> {
  await lookAt(page, photo);
  await toTheWashes(page).click();
  await expect(toTheEasel(page)).toBeVisible();
}

export async function easelWith(page: Page, photo: PhotoFile): Promise<void> {
  await planFor(page, photo);
  await toTheEasel(page).click();
  await expect(prompt(page)).toBeVisible();
}

/** What the browser has in its database: how many rows in each table. */
export const keptRows = (page: Page): Promise<Record<string, number>> =>
  page.evaluate(
    () =>
      new Promise<Record<string, number>>((resolve, reject) => {
        const opening = indexedDB.open('firstwash');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const database = opening.result;
          const names = [...database.objectStoreNames];
          const counts: Record<string, number> = {};
          const transaction = database.transaction(names);
          for (const name of names) {
            const counting = transaction.objectStore(name).count();
            counting.onsuccess = () => {
              counts[name] = counting.result;
            };
          }
          transaction.oncomplete = () => {
            database.close();
            resolve(counts);
          };
        };
      }),
  );

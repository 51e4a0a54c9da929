import type { Page } from '@playwright/test';

/** Ids of all lines of all logs that the browser's database holds, read in a transaction of its own. */
export const keptEvents = (page: Page): Promise<string[]> =>
  page.evaluate(
    () =>
      new Promise<string[]>((resolve, reject) => {
        const opening = indexedDB.open('firstwash');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const database = opening.result;
          const asked = database.transaction('events').objectStore('events').getAll();
          asked.onerror = () => reject(asked.error);
          asked.onsuccess = () => {
            database.close();
            resolve((asked.result as { id: string }[]).map(({ id }) => id));
          };
        };
      }),
  );

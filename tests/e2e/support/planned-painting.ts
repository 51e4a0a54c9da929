import { readFileSync, writeFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { releaseFolder } from './release-folder.ts';
import { prompt, screen, toTheEasel } from './walk.ts';

// Photos read and planned by the app itself, once before all walks (planned-painting.setup.ts): those that are about
// what comes after begin with these rows in the database instead of seconds of reading and planning each.

/** The small photo of four greys; the example's, small: all its colours, and details, whites, edges. */
export type KeptPainting = 'small photo' | 'small example';

/** Rows of every table but the settings; what JSON does not know is tagged. */
type KeptTables = Record<string, unknown[]>;

const fileOf = (name: KeptPainting): string =>
  `${releaseFolder('v1')}.planned-${name.replace(' ', '-')}.json`;

/** In the page: all rows, bytes as base64. */
async function takeRows(page: Page): Promise<KeptTables> {
  return page.evaluate(async () => {
    const base64 = (bytes: ArrayBuffer) => {
      let text = '';
      for (const byte of new Uint8Array(bytes)) text += String.fromCharCode(byte);
      return btoa(text);
    };
    const tagged = async (value: unknown): Promise<unknown> => {
      if (value instanceof Blob)
        return { tag: 'Blob', type: value.type, bytes: base64(await value.arrayBuffer()) };
      if (value instanceof ArrayBuffer) return { tag: 'ArrayBuffer', bytes: base64(value) };
      if (ArrayBuffer.isView(value)) {
        const { buffer, byteOffset, byteLength } = value;
        const bytes = base64((buffer as ArrayBuffer).slice(byteOffset, byteOffset + byteLength));
        return { tag: value.constructor.name, bytes };
      }
      if (Array.isArray(value)) return Promise.all(value.map(tagged));
      if (value === null || typeof value !== 'object') return value;
      if (Object.getPrototypeOf(value) !== Object.prototype) throw new Error('a row of a new kind');
      const entries = Object.entries(value).map(async ([key, one]) => [key, await tagged(one)]);
      return Object.fromEntries(await Promise.all(entries));
    };
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const opening = indexedDB.open('firstwash');
      opening.onsuccess = () => resolve(opening.result);
      opening.onerror = () => reject(opening.error);
    });
    const tables: Record<string, unknown[]> = {};
    for (const name of database.objectStoreNames) {
      if (name === 'settings') continue;
      const rows = await new Promise<unknown[]>((resolve, reject) => {
        const asking = database.transaction(name).objectStore(name).getAll();
        asking.onsuccess = () => resolve(asking.result);
        asking.onerror = () => reject(asking.error);
      });
      tables[name] = (await tagged(rows)) as unknown[];
    }
    database.close();
    return tables;
  });
}

/** In the page: the rows put in beside what is there. */
async function putRows(page: Page, kept: KeptTables): Promise<void> {
  await page.evaluate(async (tables) => {
    type Tagged = { tag?: string; type?: string; bytes?: string };
    const plain = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(plain);
      if (value === null || typeof value !== 'object') return value;
      const { tag, type, bytes } = value as Tagged;
      if (tag === undefined || bytes === undefined) {
        return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, plain(one)]));
      }
      const buffer = Uint8Array.from(atob(bytes), (char) => char.charCodeAt(0)).buffer;
      if (tag === 'ArrayBuffer') return buffer;
      if (tag === 'Blob') return new Blob([buffer], { type: type ?? '' });
      const View = Reflect.get(window, tag) as new (bytes: ArrayBuffer) => unknown;
      return new View(buffer);
    };
    await new Promise<void>((resolve, reject) => {
      const opening = indexedDB.open('firstwash');
      opening.onerror = () => reject(opening.error);
      opening.onsuccess = () => {
        const database = opening.result;
        const putting = database.transaction(Object.keys(tables), 'readwrite');
        for (const [name, rows] of Object.entries(tables))
          for (const row of rows) putting.objectStore(name).put(plain(row));
        putting.onabort = () => reject(putting.error);
        putting.oncomplete = () => {
          database.close();
          resolve();
        };
      };
    });
  }, kept);
}

/** Keeps what the browser has now for all walks to begin with. */
export async function keepPlannedPainting(page: Page, name: KeptPainting): Promise<void> {
  writeFileSync(fileOf(name), JSON.stringify(await takeRows(page)));
}

/** From the first screen of an app with the usual box, to a screen of a painting read and planned before. */
async function goTo(page: Page, name: KeptPainting, place: 'plan' | 'easel'): Promise<void> {
  await expect(screen(page, 'start')).toBeVisible();
  const tables = JSON.parse(readFileSync(fileOf(name), 'utf8')) as KeptTables;
  await putRows(page, tables);
  const [painting] = tables.paintings as { id: string }[];
  await page.evaluate((hash) => {
    window.location.hash = hash;
  }, `#/painting/${painting?.id}/${place}`);
}

/** To its plan, as she left it. */
export async function planOf(page: Page, name: KeptPainting): Promise<void> {
  await goTo(page, name, 'plan');
  await expect(toTheEasel(page)).toBeVisible();
}

/** To its easel, with no step begun. */
export async function easelOf(page: Page, name: KeptPainting): Promise<void> {
  await goTo(page, name, 'easel');
  await expect(prompt(page)).toBeVisible();
}

export const easelOfSmallPhoto = (page: Page): Promise<void> => easelOf(page, 'small photo');

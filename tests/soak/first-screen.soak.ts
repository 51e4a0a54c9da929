import { readFileSync } from 'node:fs';
import type { BrowserContext, CDPSession, Page } from '@playwright/test';
import { expect, test } from '../e2e/support/app-page.ts';
import { smallPhoto } from '../e2e/support/fixture-file.ts';
import { planOf } from '../e2e/support/planned-painting.ts';
import { readyOffline } from '../e2e/support/ready-offline.ts';

const counts = [3, 50, 500] as const;
const loads = 5;
const slower = 4;

/** In the page: the one painting that is there becomes so many, each with plan, reading, picture and three photos. */
const multiply = (page: Page, count: number, photo: readonly number[]): Promise<void> =>
  page.evaluate(
    async ([many, bytes]) => {
      const database = await new Promise<IDBDatabase>((done, failed) => {
        const opening = indexedDB.open('firstwash');
        opening.onsuccess = () => done(opening.result);
        opening.onerror = () => failed(opening.error);
      });
      const all = (table: string): Promise<Record<string, unknown>[]> =>
        new Promise((done) => {
          const asking = database.transaction(table).objectStore(table).getAll();
          asking.onsuccess = () => done(asking.result);
        });
      const one = async (table: string) => (await all(table))[0] ?? {};
      const [painting, card, picture] = [
        await one('paintings'),
        await one('cards'),
        await one('thumbnails'),
      ];
      const [plan, reading] = [await one('plans'), await one('readings')];
      const buffer = new Uint8Array(bytes).buffer;
      for (let from = 0; from < many; from += 20) {
        const tables = ['paintings', 'cards', 'thumbnails', 'plans', 'readings', 'photos'] as const;
        const filling = database.transaction([...tables], 'readwrite');
        for (let i = from; i < Math.min(many, from + 20); i++) {
          const id = `meadow ${i}`;
          const its = { paintingId: id, readingId: `reading ${i}` };
          const title = `Seed heads, evening ${i}`;
          filling.objectStore('paintings').put({ ...painting, id, title, planIds: [`plan ${i}`] });
          filling.objectStore('cards').put({ ...card, id, title, updatedAt: i });
          filling.objectStore('thumbnails').put({ ...picture, id });
          filling.objectStore('plans').put({ ...plan, ...its, id: `plan ${i}` });
          filling.objectStore('readings').put({ ...reading, paintingId: id, id: `reading ${i}` });
          for (let n = 0; n < 3; n++)
            filling.objectStore('photos').put({
              ...{ id: `photo ${i} ${n}`, bytes: buffer, mime: 'image/jpeg' },
              ...{ sha256: '', name: 'seed heads.jpg' },
            });
        }
        await new Promise<void>((done, failed) => {
          filling.oncomplete = () => done();
          filling.onabort = () => failed(filling.error);
        });
      }
      database.close();
    },
    [count, photo] as const,
  );

interface Load {
  /** From the navigation until the frame with the first cards was painted, ms by the clock. */
  readonly shownMs: number;
  /** Processor time of the page's main thread until then, ms; and until its pictures are there and all is quiet. */
  readonly mainMs: number;
  readonly quietMs: number;
}

async function load(page: Page, devtools: CDPSession, url: string): Promise<Load> {
  await page.goto('about:blank');
  // Only while it is measured: a slowed page keeps a core busy even when it rests.
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: slower });
  const busy = async (): Promise<number> => {
    const { metrics } = await devtools.send('Performance.getMetrics');
    return 1000 * (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? 0);
  };
  const before = await busy();
  await page.goto(url);
  await page.waitForFunction(() => 'cardsAt' in window);
  const mainMs = (await busy()) - before;
  const shownMs = await page.evaluate(() => Reflect.get(window, 'cardsAt') as number);
  await page.waitForTimeout(1200); // nothing more is done then but what waits for a rest
  const quietMs = (await busy()) - before;
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: 1 });
  return { shownMs, mainMs, quietMs };
}

const middle = (figures: readonly number[]): number =>
  [...figures].sort((a, b) => a - b)[Math.floor(figures.length / 2)] ?? 0;

// As on her device: from the second visit on the files come from the service worker, as the host has them.
test.use({ serviceWorkers: 'allow' });

test('the first screen is there within a second, with 3, 50 and 500 paintings alike', async ({
  browser,
  host,
}) => {
  const photo = [...readFileSync(smallPhoto)];
  const seen = new Map<number, Load[]>();
  const open = new Map<number, { context: BrowserContext; page: Page; devtools: CDPSession }>();
  for (const count of counts) {
    const context = await browser.newContext({ serviceWorkers: 'allow' });
    const page = await context.newPage();
    await page.goto(host.url);
    await readyOffline(page);
    await planOf(page, 'small example');
    await page.goto('about:blank');
    await page.goto(host.url);
    await multiply(page, count - 1, photo);
    await page.addInitScript(() => {
      new MutationObserver((_, observer) => {
        if (!document.querySelector('section[aria-label="Paintings"] li')) return;
        observer.disconnect();
        // A frame is painted right after its callbacks; what is sent from one arrives when that is done.
        const painted = new MessageChannel();
        painted.port1.onmessage = () => Object.assign(window, { cardsAt: performance.now() });
        requestAnimationFrame(() => painted.port2.postMessage(null));
      }).observe(document, { childList: true, subtree: true });
    });
    const devtools = await context.newCDPSession(page);
    await devtools.send('Performance.enable', { timeDomain: 'threadTicks' });
    open.set(count, { context, page, devtools });
    seen.set(count, []);
  }
  // In turn, so that whatever else the machine does falls on all alike; the first load of each only warms up.
  for (let n = 0; n <= loads; n++)
    for (const [count, { page, devtools }] of open) {
      const found = await load(page, devtools, host.url);
      if (n > 0) seen.get(count)?.push(found);
    }
  const found = (count: number, what: keyof Load): number =>
    middle((seen.get(count) ?? []).map((each) => each[what]));
  const ratio = (count: number): number => found(count, 'mainMs') / found(3, 'mainMs');
  const soonest = (count: number): number =>
    Math.min(...(seen.get(count) ?? []).map(({ shownMs }) => shownMs));
  for (const count of counts) {
    const ms = (what: keyof Load): string => `${found(count, what).toFixed(0)} ms`;
    console.log(
      `${count} paintings, ${slower} times slower: first cards painted after ${ms('shownMs')} by the clock (at best ${soonest(count).toFixed(0)}), main thread busy for ${ms('mainMs')} until then and ${ms('quietMs')} until all is quiet, ${ratio(count).toFixed(2)} times that of 3`,
    );
  }
  for (const { context } of open.values()) await context.close();
  // (own): twelve cards hang at first instead of 3. The clock counts what else the machine does: its best load is held.
  expect(ratio(500)).toBeLessThan(2);
  expect(soonest(500)).toBeLessThan(1000);
});

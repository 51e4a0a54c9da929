import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BrowserContext, Page } from '@playwright/test';
import { MIGRATIONS } from '../../app/storage/schema.ts';
import { expect, test } from '../e2e/support/app-page.ts';
import { killerOf, openKeptProfile } from '../e2e/support/kept-profile.ts';
import { keptRows, screen } from '../e2e/support/walk.ts';
import { seeded } from '../support/seeded.ts';
import { madeStore } from '../support/state/made-store.ts';
import type { StaticServer } from '../support/static-server.ts';
import { paintingSample, photoSample } from '../support/storage/kept-samples.ts';
import { copyOf, fillStore } from '../support/storage/made-backup.ts';

/** So many of each: with the thirty of a session they are fifty (own). */
const kills = 10;

/** Of the app's origin, without the app: the database is looked at from there. */
const plainPage = 'plain';

const withPlainPage = (host: StaticServer): void => {
  host.answer = (path, response) => {
    if (path !== plainPage) return false;
    response.writeHead(200, { 'Content-Type': 'text/html' }).end('<link rel=icon href=data:,>');
    return true;
  };
};

const firstPage = async (context: BrowserContext): Promise<Page> =>
  context.pages()[0] ?? (await context.newPage());

/** A copy of two dozen paintings, some with a plan, a session, a record, and a box: it takes a moment to bring back. */
async function largeCopy(file: string): Promise<void> {
  const store = await madeStore();
  await fillStore(store);
  for (let i = 0; i < 24; i++)
    await store.addPainting(
      paintingSample(`meadow ${i}`, `photo of ${i}`),
      photoSample(`photo of ${i}`, 700_000),
    );
  writeFileSync(file, Buffer.from(await (await copyOf(store)).arrayBuffer()));
}

const deleted = (page: Page): Promise<void> =>
  page.evaluate(
    () =>
      new Promise<void>((done, failed) => {
        const deleting = indexedDB.deleteDatabase('firstwash');
        deleting.onsuccess = () => done();
        deleting.onerror = () => failed(deleting.error);
      }),
  );

/** A page of the app's origin, nothing kept there. */
async function withoutDatabase(context: BrowserContext, host: StaticServer): Promise<Page> {
  const page = await firstPage(context);
  await page.goto(`${host.url}${plainPage}`);
  await deleted(page);
  return page;
}

const told = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.body.textContent.includes('It is all here.')).catch(() => false);

test(`${kills} kills while a copy is brought back: all of it is there, or nothing`, async ({
  folder,
  host,
  guarded,
}) => {
  withPlainPage(host);
  const random = seeded(20_320_401);
  const file = join(folder, 'copy.zip');
  await largeCopy(file);
  let whole: Record<string, number> | null = null;
  let tookMs = 0;
  let [all, none, saidSo] = [0, 0, 0];
  for (let kill = 0; kill <= kills; kill++) {
    const context = await openKeptProfile(folder);
    await guarded.watch(context);
    const page = await withoutDatabase(context, host);
    await page.goto(`${host.url}#/copies`);
    await expect(screen(page, 'copies')).toBeVisible();
    await page.getByLabel('Copy to bring back').setInputFiles(file);
    const bring = page.getByRole('button', { name: 'Bring it back' });
    await expect(bring).toBeVisible();
    const before = await keptRows(page);
    const killNow = await killerOf(context);
    const start = performance.now();
    await bring.click();
    if (whole === null) {
      // The first goes through: what all of it is, and how long it takes.
      await expect.poll(() => told(page), { intervals: [10] }).toBe(true);
      tookMs = performance.now() - start;
      whole = await keptRows(page);
      await context.close();
      continue;
    }
    await page.waitForTimeout(random() * 1.1 * tookMs);
    const said = await told(page);
    await killNow();

    const again = await openKeptProfile(folder);
    await guarded.watch(again);
    const reopened = await firstPage(again);
    await reopened.goto(host.url);
    await expect(screen(reopened, 'start')).toBeVisible();
    const after = await keptRows(reopened);
    expect([before, whole], `kill ${kill}`).toContainEqual(after);
    const isAll = after.paintings === whole.paintings;
    if (said) expect(isAll, `kill ${kill}: said to be all here`).toBe(true);
    [all, none, saidSo] = [all + Number(isAll), none + Number(!isAll), saidSo + Number(said)];
    await again.close();
  }
  console.log(
    `${kills} kills while a copy was brought back: ${none} left nothing, ${all} all of it (${saidSo} said so), none a part`,
  );
  expect(none).toBeGreaterThan(0);
});

/** Fills a database of the first version with paintings that have a plan and a log each; answers its rows. */
const fillOldest = (page: Page, paintings: number): Promise<void> =>
  page.evaluate(
    ([tables, count, painting, makeTables]) =>
      new Promise<void>((done, failed) => {
        const opening = indexedDB.open('firstwash', 1);
        opening.onupgradeneeded = () => new Function(`return ${makeTables}`)()(opening.result);
        opening.onerror = () => failed(opening.error);
        opening.onsuccess = () => {
          const database = opening.result;
          const filling = database.transaction([...tables], 'readwrite');
          for (let i = 0; i < count; i++) {
            const id = `meadow ${i}`;
            const session = { id: `s ${i}`, paintingId: id, planId: `plan ${i}` };
            const row = {
              ...painting,
              id,
              title: id,
              planIds: [`plan ${i}`],
              sessionIds: [`s ${i}`],
            };
            filling.objectStore('paintings').put(row);
            filling.objectStore('sessions').put(session);
            for (let seq = 0; seq < 5; seq++)
              filling.objectStore('events').put({ id: `${i} ${seq}`, sessionId: `s ${i}`, seq });
          }
          filling.oncomplete = () => {
            database.close();
            done();
          };
          filling.onabort = () => failed(filling.error);
        };
      }),
    [
      ['paintings', 'sessions', 'events'],
      paintings,
      JSON.parse(JSON.stringify(paintingSample('meadow', 'photo'))) as object,
      String(MIGRATIONS[0]),
    ] as const,
  );

/** Told when the app's database begins to climb from the first version, and when it has climbed. */
async function climbOf(page: Page): Promise<{ begins: Promise<void>; ends: Promise<void> }> {
  const heard = new Map<string, () => void>();
  const once = (what: string) => new Promise<void>((done) => void heard.set(what, done));
  const told = { begins: once('begins'), ends: once('ends') };
  await page.exposeBinding('climb', (_source, what: string) => heard.get(what)?.());
  await page.addInitScript(() => {
    const open = IDBFactory.prototype.open;
    const tell = (what: string) => (Reflect.get(window, 'climb') as (what: string) => void)(what);
    IDBFactory.prototype.open = function (...asked) {
      const opening = open.apply(this, asked);
      opening.addEventListener('upgradeneeded', ({ oldVersion }) => {
        if (oldVersion !== 1) return;
        tell('begins');
        opening.addEventListener('success', () => tell('ends'));
      });
      return opening;
    };
  });
  return told;
}

const versionIn = (page: Page): Promise<number | undefined> =>
  page.evaluate(
    async () => (await indexedDB.databases()).find(({ name }) => name === 'firstwash')?.version,
  );

test(`${kills} kills while the database climbs: it is the old one or the new one, with every row`, async ({
  folder,
  host,
  guarded,
}) => {
  withPlainPage(host);
  const random = seeded(20_320_402);
  const paintings = 800;
  let tookMs = 0;
  let [old, climbed] = [0, 0];
  for (let kill = 0; kill <= kills; kill++) {
    const context = await openKeptProfile(folder);
    await guarded.watch(context);
    const page = await withoutDatabase(context, host);
    await fillOldest(page, paintings);
    const before = await keptRows(page);
    const killNow = await killerOf(context);
    const climb = await climbOf(page);
    await page.goto(host.url, { waitUntil: 'commit' });
    await climb.begins;
    const start = performance.now();
    if (kill === 0) {
      await climb.ends;
      tookMs = performance.now() - start;
      await context.close();
      continue;
    }
    await page.waitForTimeout(1.3 * random() * tookMs);
    await killNow();

    const again = await openKeptProfile(folder);
    await guarded.watch(again);
    const reopened = await firstPage(again);
    await reopened.goto(`${host.url}${plainPage}`);
    const version = await versionIn(reopened);
    const after = await keptRows(reopened);
    expect([1, MIGRATIONS.length], `kill ${kill}`).toContain(version);
    const cards = version === 1 ? {} : { cards: paintings };
    expect(after, `kill ${kill}`).toEqual({ ...before, ...cards });
    [old, climbed] = [old + Number(version === 1), climbed + Number(version !== 1)];
    await reopened.goto(host.url);
    await expect(screen(reopened, 'start')).toBeVisible();
    await expect.poll(() => keptRows(reopened)).toEqual({ ...before, cards: paintings });
    await again.close();
  }
  console.log(
    `${kills} kills within a climb of ${tookMs.toFixed(0)} ms: ${old} left it as it was, ${climbed} climbed, every row of ${paintings} paintings there`,
  );
  expect(old + climbed).toBe(kills);
});

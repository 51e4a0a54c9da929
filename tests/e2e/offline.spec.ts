import { relative } from 'node:path';
import { filesUnder } from '../../app/build/files-under.ts';
import { expect, test } from './support/app-page.ts';
import { killBrowser, openKeptProfile } from './support/kept-profile.ts';
import { readyOffline } from './support/ready-offline.ts';
import { releaseFolder } from './support/release-folder.ts';

test.use({ serviceWorkers: 'allow' });

for (const prefix of ['/', '/studio/evening/'])
  test.describe(`hosted at ${prefix}`, () => {
    test.use({ prefix });

    test('starts with the host gone, from any address', async ({ page, host }) => {
      await page.goto('./');
      await readyOffline(page);
      await host.close();
      for (const address of ['./', './?utm_source=x&y=2', './index.html', './#/plan/3']) {
        await page.goto(address);
        await page.reload();
        await expect(page.locator('#app'), address).not.toBeEmpty();
      }
      await page.goto('./plan/3?from=mail');
      await expect(page.locator('#app')).not.toBeEmpty();
      expect(page.url()).toBe(`${host.url}?from=mail#/plan/3`);
    });
  });

test('every built file is kept on the device, the example photo too', async ({ page, host }) => {
  await page.goto('./');
  await readyOffline(page);
  const kept = await page.evaluate(async () => {
    const names = await caches.keys();
    const lists = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
    return lists.flat().map((request) => request.url.replace(/\?__WB_REVISION__=.*/, ''));
  });
  const folder = releaseFolder('v1');
  const built = (await filesUnder(folder))
    .map((file) => relative(folder, file).replaceAll('\\', '/'))
    .filter((file) => !file.endsWith('.map') && file !== 'service-worker.js')
    .filter((file) => !file.startsWith('icons/screenshots/')); // looked at before it is installed
  expect(kept.map((url) => url.slice(host.url.length)).sort()).toEqual(built.sort());
  expect(built.some((file) => /^assets\/seed-heads-.*\.jpg$/.test(file))).toBe(true);
});

test('says it is ready only when all is kept', async ({ page, host }) => {
  let letGo = (): void => {};
  const held = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  let waits = (): void => {};
  const asked = new Promise<void>((resolve) => {
    waits = resolve;
  });
  host.answer = async (path) => {
    if (path !== 'icons/icon-maskable-512.png') return false;
    waits();
    await held;
    return false;
  };
  await page.goto('./');
  await asked;
  await page.waitForTimeout(500);
  await expect(page.locator('html')).not.toHaveAttribute('data-offline', 'ready');
  letGo();
  await readyOffline(page);
});

test('a file that cannot be had leaves it working online, and it tries again', async ({
  page,
  host,
  guarded,
}) => {
  guarded.allow(/404|bad-precaching-response/);
  let refused = 0;
  host.answer = (path, response) => {
    if (path !== 'icons/icon-maskable-512.png') return false;
    refused++;
    response.writeHead(404).end();
    return true;
  };
  await page.goto('./');
  await expect.poll(() => refused).toBeGreaterThan(0);
  await page.waitForTimeout(500);
  await expect(page.locator('#app')).not.toBeEmpty();
  await expect(page.locator('html')).not.toHaveAttribute('data-offline', 'ready');
  host.answer = undefined;
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  await readyOffline(page);
});

test('a host that leads / to index.html does not spoil the kept pages', async ({ page, host }) => {
  host.answer = (path, response) => {
    if (path !== '') return false;
    response.writeHead(302, { Location: './index.html' }).end();
    return true;
  };
  await page.goto('./');
  await readyOffline(page);
  const redirected = await page.evaluate(async () => {
    const found: string[] = [];
    for (const name of await caches.keys()) {
      const cache = await caches.open(name);
      for (const request of await cache.keys())
        if ((await cache.match(request))?.redirected) found.push(request.url);
    }
    return found;
  });
  expect(redirected).toEqual([]);
  await host.close();
  await page.goto('./');
  await expect(page.locator('#app')).not.toBeEmpty();
});

test('starts in a browser that was killed, with the host gone', async ({
  host,
  folder,
  guarded,
}) => {
  const first = await openKeptProfile(folder);
  await guarded.watch(first);
  const page = first.pages()[0] ?? (await first.newPage());
  await page.goto(host.url);
  await readyOffline(page);
  await killBrowser(first);
  await host.close();
  const again = await openKeptProfile(folder);
  await guarded.watch(again);
  const reopened = again.pages()[0] ?? (await again.newPage());
  await reopened.goto(host.url);
  await expect(reopened.locator('#app')).not.toBeEmpty();
  await readyOffline(reopened);
  await again.close();
});

test('works online where the browser has no service worker', async ({ page }) => {
  await page.addInitScript(() => {
    Object.defineProperty(Navigator.prototype, 'serviceWorker', { value: undefined });
    CacheStorage.prototype.open = () => Promise.reject(new DOMException('no', 'SecurityError'));
  });
  await page.goto('./');
  await expect(page.locator('#app')).not.toBeEmpty();
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  await page.waitForTimeout(300); // a late rejection is caught by the guard
  await expect(page.locator('html')).not.toHaveAttribute('data-offline', 'ready');
});

test('a browser that can not read the app’s scripts says so, and which ones can', async ({
  page,
}) => {
  // As one of before: no script of the app runs, and colours are not mixed by styles.
  await page.route(/\/assets\/first-[^/]*\.js$/, (route) =>
    route.fulfill({ body: '', contentType: 'text/javascript' }),
  );
  await page.route(/\/assets\/first-[^/]*\.css$/, async (route) => {
    const answer = await route.fetch();
    const body = (await answer.text()).replaceAll('color-mix(', 'no-mix(');
    await route.fulfill({ response: answer, body });
  });
  await page.goto('./');
  const words = page.getByText('This browser is too old for Firstwash');
  await expect(words).toBeInViewport();
  // A later one, which the app starts in, but not its worker.
  await page.unrouteAll();
  await page.addInitScript(() => void Reflect.deleteProperty(Array.prototype, 'toSorted'));
  await page.reload();
  await expect(page.getByRole('alert')).toHaveText(/too old to read a photo.*Chrome or Edge from/);
  await expect(words).toHaveCount(1);
  await expect(words).toBeHidden();
});

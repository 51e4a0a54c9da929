import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { expect, test } from './support/app-page.ts';
import { readyOffline } from './support/ready-offline.ts';
import { releaseFolder } from './support/release-folder.ts';

test.use({ serviceWorkers: 'allow' });

const version = (page: Page) => page.locator('meta[name=version]');
const offer = (page: Page) => page.getByTestId('update');
const comeBack = (page: Page) =>
  page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));

/** Counts the documents loaded into the page from now on. */
function countLoads(page: Page): () => number {
  let loads = 0;
  page.on('domcontentloaded', () => loads++);
  return () => loads;
}

test('a new version is offered, not forced, and taken with one reload', async ({ page, host }) => {
  await page.goto('./');
  await readyOffline(page);
  const loads = countLoads(page);
  host.serve(releaseFolder('v2'));
  await comeBack(page);
  await expect(offer(page)).toBeVisible();
  await page.waitForTimeout(500);
  expect(loads()).toBe(0);
  await page.reload(); // a plain reload is no consent
  await expect(version(page)).toHaveAttribute('content', 'v1');
  await expect(offer(page)).toBeVisible();
  const before = loads();
  await offer(page).getByRole('button').first().click();
  await expect(version(page)).toHaveAttribute('content', 'v2');
  await readyOffline(page);
  await page.waitForTimeout(500);
  await expect.poll(() => loads() - before).toBe(1);
  await expect(offer(page)).toHaveCount(0);
  await host.close();
  await page.reload();
  await expect(version(page)).toHaveAttribute('content', 'v2');
});

test('a host that gives another service worker every time makes no reload loop', async ({
  page,
  host,
}) => {
  const script = readFileSync(join(releaseFolder('v1'), 'service-worker.js'), 'utf8');
  let given = 0;
  host.answer = (path, response) => {
    if (path !== 'service-worker.js') return false;
    response.writeHead(200, { 'Content-Type': 'text/javascript', 'Cache-Control': 'no-store' });
    response.end(`${script}\n// ${given++}`);
    return true;
  };
  await page.goto('./');
  await readyOffline(page);
  const loads = countLoads(page);
  for (let look = 0; look < 3; look++) {
    const before = given;
    // Again and again: a look while an install is under way is no look of its own.
    await expect
      .poll(async () => {
        await comeBack(page);
        return given;
      })
      .toBeGreaterThan(before);
  }
  await expect(offer(page)).toBeVisible();
  expect(loads()).toBe(0);
  await offer(page).getByRole('button').first().click();
  await expect.poll(loads).toBe(1);
  await readyOffline(page);
  await page.waitForTimeout(1500);
  await expect.poll(loads).toBe(1); // its load event comes a moment after its markup
});

test('consent in one window does not reload the other, which is asked itself', async ({
  page,
  context,
  host,
}) => {
  await page.goto('./');
  await readyOffline(page);
  const other = await context.newPage();
  await other.goto('./');
  const loads = countLoads(page);
  host.serve(releaseFolder('v2'));
  await comeBack(other);
  await offer(other).getByRole('button').first().click();
  await expect(version(other)).toHaveAttribute('content', 'v2');
  await page.waitForTimeout(500);
  expect(loads()).toBe(0);
  await offer(page).getByRole('button').first().click();
  await expect(version(page)).toHaveAttribute('content', 'v2');
  await expect.poll(loads).toBe(1); // its load event comes a moment after its markup
});

test('a host that answers with another page instead of the file spoils no update', async ({
  page,
  host,
  guarded,
}) => {
  guarded.allow(/integrity|bad-precaching-response/);
  await page.goto('./');
  await readyOffline(page);
  let answered = 0;
  host.serve(releaseFolder('v2'));
  host.answer = (path, response) => {
    if (path !== 'index.html') return false;
    answered++;
    response.writeHead(200, { 'Content-Type': 'text/html' }).end('<h1>Welcome to your host</h1>');
    return true;
  };
  await comeBack(page);
  await expect.poll(() => answered).toBeGreaterThan(0);
  await page.waitForTimeout(1000);
  await expect(offer(page)).toHaveCount(0);
  await host.close();
  await page.reload();
  await expect(version(page)).toHaveAttribute('content', 'v1');
  await expect(page.locator('#app')).not.toBeEmpty();
});

test('paintings of a newer version: the version that waits can be taken, though nothing could be opened', async ({
  page,
  host,
}) => {
  await page.goto('./');
  await readyOffline(page);
  host.serve(releaseFolder('v2'));
  await page.evaluate(
    () =>
      new Promise((done) => {
        const opening = indexedDB.open('firstwash', 99);
        opening.onsuccess = () => {
          opening.result.close();
          done(null);
        };
      }),
  );
  await page.reload();
  await expect(page.getByRole('alert')).toHaveText(/^Your paintings were saved by a newer version/);
  await expect(version(page)).toHaveAttribute('content', 'v1');
  await page.getByRole('button', { name: 'Use the newer version' }).click();
  await expect(version(page)).toHaveAttribute('content', 'v2');
});

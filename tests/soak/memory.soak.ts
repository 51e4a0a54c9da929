import { readFileSync } from 'node:fs';
import type { Browser, CDPSession, Page } from '@playwright/test';
import { expect, test } from '../e2e/support/app-page.ts';
import { easelOf } from '../e2e/support/planned-painting.ts';
import { prompt, screen, toTheEasel, toTheWashes } from '../e2e/support/walk.ts';

/** So many openings, and so many before the first look: what is made once is there then (own). */
const rounds = 50;
const warmRounds = 5;

const megabyte = 2 ** 20;

/** Memory of the page's process, bytes, by Linux: what is resident of it (proc(5), VmRSS). */
async function processBytes(browser: Browser): Promise<number> {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  await session.detach();
  const sizes = processInfo
    .filter(({ type }) => type === 'renderer')
    .map(({ id }) => /VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${id}/status`, 'utf8'))?.[1]);
  return Math.max(...sizes.map((each) => Number(each ?? 0) * 1024));
}

interface Held {
  readonly heapMb: number;
  readonly processMb: number;
  readonly nodes: number;
  readonly listeners: number;
}

async function heldBy(page: Page, devtools: CDPSession): Promise<Held> {
  for (let i = 0; i < 3; i++) await devtools.send('HeapProfiler.collectGarbage');
  const { metrics } = await devtools.send('Performance.getMetrics');
  const of = (wanted: string): number => metrics.find(({ name }) => name === wanted)?.value ?? 0;
  const browser = page.context().browser();
  return {
    heapMb: of('JSHeapUsedSize') / megabyte,
    processMb: browser ? (await processBytes(browser)) / megabyte : 0,
    nodes: of('Nodes'),
    listeners: of('JSEventListeners'),
  };
}

async function round(page: Page): Promise<void> {
  const go = (hash: string) => page.evaluate((to) => window.location.assign(to), hash);
  const [, id] = /painting\/([^/]+)/.exec(page.url()) ?? [];
  await go(`#/painting/${id}/look`);
  await expect(toTheWashes(page)).toBeVisible();
  await go(`#/painting/${id}/plan`);
  await expect(toTheEasel(page)).toBeVisible();
  await go(`#/painting/${id}/easel`);
  await expect(prompt(page)).toBeVisible();
}

test(`${rounds} rounds of study, plan and easel hold no more memory at the end`, async ({
  page,
  context,
}) => {
  await page.goto('./');
  await easelOf(page, 'small example');
  await expect(screen(page, 'easel')).toBeVisible();
  const devtools = await context.newCDPSession(page);
  await devtools.send('Performance.enable');
  const looks: Held[] = [];
  for (let done = 1; done <= warmRounds + rounds; done++) {
    await round(page);
    if (done < warmRounds || (done - warmRounds) % 10 !== 0) continue;
    const held = await heldBy(page, devtools);
    looks.push(held);
    console.log(
      `after ${done - warmRounds} rounds: heap ${held.heapMb.toFixed(1)} MB, process ${held.processMb.toFixed(0)} MB, ${held.nodes} nodes, ${held.listeners} listeners`,
    );
  }
  const [first, last] = [looks[0], looks.at(-1)];
  if (!first || !last) throw new Error('Nothing was looked at.');
  // (own): a screen held a round would be thousands of nodes; caches that fill at first may still settle.
  expect(last.nodes - first.nodes).toBeLessThan(200);
  expect(last.listeners - first.listeners).toBeLessThan(100);
  expect(last.heapMb / first.heapMb).toBeLessThan(1.15);
  expect(last.processMb / first.processMb).toBeLessThan(1.25);
});

// A worker built as the app is built, asked in a fresh page of Chromium.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { build } from 'vite';
import { launchOptions } from '../support/chromium.mjs';

const here = import.meta.dirname;
const root = join(here, '..', '..');

export const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];

/** The worker of `entry` as one script. */
export async function workerSource(entry) {
  const outDir = join(root, 'node_modules', '.cache', `bench-${entry.replace('.ts', '')}`);
  await build({
    root,
    configFile: false,
    logLevel: 'error',
    build: {
      outDir,
      emptyOutDir: true,
      lib: { entry: join(here, entry), formats: ['es'], fileName: 'worker' },
    },
  });
  return readFileSync(join(outDir, 'worker.js'), 'utf8');
}

/** Nothing is served: a page and its worker, `/worker.js`, are handed over here. */
export async function openBenchPage(page, source) {
  await page.route('http://bench.test/**', (route) =>
    route.request().url().endsWith('.js')
      ? route.fulfill({ contentType: 'text/javascript', body: source })
      : route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>bench</title>' }),
  );
  await page.goto('http://bench.test/');
}

/** What a fresh worker of that page answers to `task`; `photo` of the page goes with it where it has one. */
export const askPage = (page, task) =>
  page.evaluate(
    (asked) =>
      new Promise((done, failed) => {
        const worker = new Worker('/worker.js', { type: 'module' });
        worker.onerror = (fault) => failed(new Error(fault.message));
        worker.onmessage = ({ data }) => done(data);
        worker.postMessage(globalThis.photo ? { ...asked, photo: globalThis.photo } : asked);
      }),
    task,
  );

/** What the worker of `entry` answers to `task`, and the browser's version. */
export async function askWorker(entry, task) {
  const source = await workerSource(entry);
  const browser = await chromium.launch(launchOptions());
  try {
    const page = await browser.newPage();
    await openBenchPage(page, source);
    return { ...(await askPage(page, task)), version: browser.version() };
  } finally {
    await browser.close();
  }
}

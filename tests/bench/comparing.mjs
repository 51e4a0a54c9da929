// A 12-megapixel photo of a sheet to the verdict in Chromium, by the product's client and worker: clock and processor
// time, first call of a fresh worker and warm, and how soon a comparison ends that is called off.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { build } from 'vite';
import { assembly } from '../../app/build/assembly.mjs';
import { launchOptions } from '../support/chromium.mjs';
import { median } from './stages.mjs';

const bench = import.meta.dirname;
const root = join(bench, '..', '..');
const outDir = join(root, 'node_modules', '.cache', 'bench-comparing');
const firstRounds = 5;
const warmRounds = 8;
const cancelRounds = 3;
const cancelParts = [0.02, 0.15, 0.35, 0.5, 0.65, 0.8, 0.9];

const buildPage = () =>
  build({
    root,
    base: './',
    configFile: false,
    plugins: [assembly()],
    worker: { format: 'es', plugins: () => [assembly()] },
    logLevel: 'error',
    build: {
      outDir,
      emptyOutDir: true,
      rollupOptions: {
        input: join(bench, 'comparing-in-page.ts'),
        preserveEntrySignatures: 'strict',
        output: { entryFileNames: 'page.js' },
      },
    },
  });

/** Serves the built page and the photo from where they lie. */
async function openPage(browser) {
  const page = await (await browser.newContext()).newPage();
  await page.route('http://bench.test/**', (route) => {
    const { pathname } = new URL(route.request().url());
    if (pathname === '/')
      return route.fulfill({
        contentType: 'text/html',
        body: '<!doctype html><title>bench</title>',
      });
    if (pathname === '/photo.jpg')
      return route.fulfill({
        contentType: 'image/jpeg',
        body: readFileSync(join(root, 'tests', 'fixtures', 'mountain-snow.jpg')),
      });
    const contentType = pathname.endsWith('.js') ? 'text/javascript' : 'application/octet-stream';
    return route.fulfill({ contentType, body: readFileSync(join(outDir, pathname)) });
  });
  await page.goto('http://bench.test/');
  return page;
}

/** What a function of the page's module answers. */
const ask = (page, name, ...given) =>
  page.evaluate(
    async ([called, rest]) => (await import('/page.js'))[called](...rest),
    [name, given],
  );

const said = (list) => `${median(list).toFixed(0)} (least ${Math.min(...list).toFixed(0)})`;

export async function benchComparing() {
  await buildPage();
  const browser = await chromium.launch(launchOptions());
  console.log(`\ncomparing in Chromium's worker (${browser.version()}), ms, median (least)`);
  try {
    const session = await browser.newBrowserCDPSession();
    const page = await openPage(browser);
    const size = await ask(page, 'preparePhoto', '/photo.jpg');
    /** Processor time of all of the browser's renderers so far, ms; decoding may run in several threads of them. */
    const processorMs = async () => {
      const { processInfo } = await session.send('SystemInfo.getProcessInfo');
      const own = processInfo.filter(({ type }) => type === 'renderer');
      return own.reduce((sum, { cpuTime }) => sum + 1000 * cpuTime, 0);
    };
    const rounds = async (count, fresh) => {
      const found = { took: [], processor: [], longest: [] };
      for (let round = 0; round < count; round++) {
        if (fresh) await ask(page, 'freshWorker');
        const before = await processorMs();
        const { took, longest, refused } = await ask(page, 'compareOnce');
        if (refused !== null) throw new Error(`the sheet was refused: ${refused}`);
        found.took.push(took);
        found.longest.push(longest);
        found.processor.push((await processorMs()) - before);
      }
      return found;
    };
    for (const [name, { took, processor, longest }] of [
      ['first', await rounds(firstRounds, true)],
      ['warm', await rounds(warmRounds, false)],
    ])
      console.log(
        `  ${size} px to the verdict, ${name}: clock ${said(took)} (aim: 2000), processor ${said(processor)}; longest between two parts told ${said(longest)}`,
      );
    for (const part of cancelParts) {
      const ends = [];
      for (let round = 0; round < cancelRounds; round++)
        ends.push(await ask(page, 'cancelAt', part));
      console.log(
        `  called off at ${part}: who asked is free after ${said(ends.map(({ caller }) => caller))} (aim: 250), the worker answers again after ${said(ends.map(({ worker }) => worker))}`,
      );
    }
  } finally {
    await browser.close();
  }
}

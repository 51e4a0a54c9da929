// `node tests/bench/palette-in-chromium.mjs`: the search for a palette in Chromium's worker, built as the app is built.
// 33 paints, at most 5, 12 targets: the first search in a fresh page, and warm; the bytes of its tables.
import { readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { build } from 'vite';
import { launchOptions } from '../support/chromium.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const root = resolve(here, '..', '..');
const outDir = join(root, 'node_modules', '.cache', 'bench-palette');
const rounds = 5;
const megabytes = (bytes) => `${(bytes / 1e6).toFixed(1)} MB`;
const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];

await build({
  root,
  configFile: false,
  logLevel: 'error',
  build: {
    outDir,
    emptyOutDir: true,
    lib: { entry: join(here, 'palette-in-worker.ts'), formats: ['es'], fileName: 'worker' },
  },
});
const source = readFileSync(join(outDir, 'worker.js'), 'utf8');
const browser = await chromium.launch(launchOptions());
const page = await browser.newPage();
// Nothing is served: the page and its worker are handed over here.
await page.route('http://bench.test/**', (route) =>
  route.request().url().endsWith('.js')
    ? route.fulfill({ contentType: 'text/javascript', body: source })
    : route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>bench</title>' }),
);
await page.goto('http://bench.test/');
const found = await page.evaluate(
  (task) =>
    new Promise((done, failed) => {
      const worker = new Worker('/worker.js', { type: 'module' });
      worker.onerror = (fault) => failed(new Error(fault.message));
      worker.onmessage = ({ data }) => done(data);
      worker.postMessage(task);
    }),
  { rounds },
);
console.log(
  `palette search in Chromium's worker (${browser.version()}): ${found.paints} paints, at most 5, ${found.targets} targets, cost ${found.cost.toFixed(3)}`,
);
console.log(
  `  first ${found.cold.toFixed(0)} ms (aim: 5000), warm ${median(found.warm).toFixed(0)} ms (aim: 2000; ${found.warm.map((each) => each.toFixed(0)).join(', ')})`,
);
console.log(
  `  mixes ${megabytes(found.libraryBytes)}, tables ${megabytes(found.tableBytes)} (aim: under 100 MB together)`,
);
await browser.close();

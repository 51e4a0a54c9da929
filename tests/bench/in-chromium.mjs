// The reading, the search for a palette and the plan in Chromium's worker: first call and warm, and the memory they
// take. No peer: the ratios to other libraries are measured in Node, in one run with them.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { build } from 'vite';
import { assembly } from '../../app/build/assembly.mjs';
import { launchOptions } from '../support/chromium.mjs';
import { median, printRows, stageRows } from './stages.mjs';

const bench = import.meta.dirname;
const root = join(bench, '..', '..');

const megabytes = (bytes) => `${(bytes / 1e6).toFixed(1)} MB`;

/** The worker as one script, built as the app is built. */
async function workerSource() {
  const outDir = join(root, 'node_modules', '.cache', 'bench-in-worker');
  await build({
    root,
    configFile: false,
    plugins: [assembly()],
    logLevel: 'error',
    build: {
      outDir,
      emptyOutDir: true,
      lib: { entry: join(bench, 'in-worker.ts'), formats: ['es'], fileName: 'worker' },
    },
  });
  return readFileSync(join(outDir, 'worker.js'), 'utf8');
}

/** A fresh page and its worker, `/worker.js`: nothing is served, both are handed over here. */
async function openBenchPage(browser, source) {
  const context = await browser.newContext();
  const page = await context.newPage();
  await page.route('http://bench.test/**', (route) =>
    route.request().url().endsWith('.js')
      ? route.fulfill({ contentType: 'text/javascript', body: source })
      : route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>bench</title>' }),
  );
  await page.goto('http://bench.test/');
  return { page, close: () => context.close() };
}

/** What a fresh worker of that page answers to `task`; `photo` of the page goes with it where it has one. */
const askPage = (page, task) =>
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

/** Peak memory of the largest renderer process so far, MB; null where the system does not tell. */
function peakMegabytes(pids) {
  const peaks = pids.flatMap((pid) => {
    try {
      const found = /VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'));
      return found ? [Number(found[1]) / 1024] : [];
    } catch {
      return [];
    }
  });
  return peaks.length ? Math.max(...peaks) : null;
}

/** The photo's bytes as a global of the page. */
async function handPhoto(page, { width, height, rgba }) {
  await page.evaluate(
    async ({ text, ...size }) => {
      const answer = await fetch(`data:application/octet-stream;base64,${text}`);
      globalThis.photo = { ...size, rgba: new Uint8ClampedArray(await answer.arrayBuffer()) };
    },
    { text: Buffer.from(rgba.buffer).toString('base64'), width, height },
  );
}

/** Stage by stage: the first reading of a fresh worker, and the median and the least of those after it. */
async function benchStages(page, photo) {
  await handPhoto(page, photo);
  console.log('  stages: first; then warm, median and least');
  printRows(stageRows(await askPage(page, { work: 'stages', rounds: 8 })));
}

const slowedTimes = 4;

/** Chromium's throttling slows a page's own thread and leaves its workers alone, so the page reads here itself. */
async function benchSlowedStages(page, photo) {
  await handPhoto(page, photo);
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: slowedTimes });
  const times = await page.evaluate(async () => {
    const { answerTo } = await import('/worker.js');
    return answerTo({ work: 'stages', photo: globalThis.photo, rounds: 4 });
  });
  console.log(`  stages on the page's own thread, slowed ${slowedTimes} times: as above`);
  printRows(stageRows(times));
}

async function benchReading(browser, page, work, photo) {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  const pids = processInfo.filter(({ type }) => type === 'renderer').map(({ id }) => id);
  const { width, height } = photo;
  await handPhoto(page, photo);
  const before = peakMegabytes(pids);
  const times = await askPage(page, { work, rounds: 6 });
  const after = peakMegabytes(pids);
  const memory =
    before === null || after === null
      ? 'memory not measured'
      : `${Math.round(after - before)} MB more at the peak`;
  console.log(
    `  ${work}, ${width} x ${height} px: first ${times[0].toFixed(0)}, warm ${median(times.slice(1)).toFixed(0)}; ${memory}`,
  );
}

async function benchSearch(page) {
  const found = await askPage(page, { work: 'palette search', rounds: 5 });
  const { paints, targets, cost, cold, warm, libraryBytes, tableBytes } = found;
  console.log(
    `  palette search, ${paints} paints, at most 5, ${targets} targets, cost ${cost.toFixed(3)}: first ${cold.toFixed(0)} (aim: 5000), warm ${median(warm).toFixed(0)} (aim: 2000); mixes ${megabytes(libraryBytes)}, tables ${megabytes(tableBytes)} (aim: under 100 MB together)`,
  );
}

async function benchPlans(page) {
  const plans = await askPage(page, { work: 'plans', rounds: 7 });
  for (const { name, mixCount, searched, chosen, changed } of plans) {
    const planned = median(chosen);
    console.log(
      `  plan of ${name}: paints searched as well ${searched.toFixed(0)}; paints chosen ${planned.toFixed(0)} (aim: 300), ${(planned / mixCount).toFixed(1)} a mix (${mixCount}); a change of hers ${median(changed).toFixed(0)}`,
    );
  }
}

/** Prints times in ms of each kind of work, each in a fresh page. */
export async function benchInChromium(photo) {
  const source = await workerSource();
  const browser = await chromium.launch(launchOptions());
  console.log(`\nin Chromium's worker (${browser.version()}), ms`);
  try {
    for (const measure of [
      ...['raster and lightness', 'reading', 'reading after warming up'].map(
        (work) => (page) => benchReading(browser, page, work, photo),
      ),
      (page) => benchStages(page, photo),
      (page) => benchSlowedStages(page, photo),
      benchSearch,
      benchPlans,
    ]) {
      const { page, close } = await openBenchPage(browser, source);
      await measure(page);
      await close();
    }
  } finally {
    await browser.close();
  }
}

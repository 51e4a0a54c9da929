// The chain and the whole reading in Chromium's worker: first call and warm, and the memory it takes. No peer:
// the ratios to other libraries are measured in Node, in one run with them.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { build } from 'vite';
import { launchOptions } from '../support/chromium.mjs';

const rounds = 6;
const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];

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

async function workerSource(root, here, outDir) {
  await build({
    root,
    configFile: false,
    logLevel: 'error',
    build: {
      outDir,
      emptyOutDir: true,
      lib: { entry: join(here, 'in-worker.ts'), formats: ['es'], fileName: 'in-worker' },
    },
  });
  return readFileSync(join(outDir, 'in-worker.js'), 'utf8');
}

/** Prints times in ms of each kind of work, each in a fresh page. */
export async function benchInChromium({ root, here, photo }) {
  const source = await workerSource(
    root,
    here,
    join(root, 'node_modules', '.cache', 'bench-worker'),
  );
  const browser = await chromium.launch(launchOptions());
  console.log(`\nin Chromium's worker (${browser.version()}), ${photo.width} x ${photo.height} px`);
  const pixels = Buffer.from(photo.rgba.buffer).toString('base64');
  for (const work of ['chain', 'reading', 'reading after warming up']) {
    const context = await browser.newContext();
    const page = await context.newPage();
    // Nothing is served: the page and its worker are handed over here.
    await page.route('http://bench.test/**', (route) =>
      route.request().url().endsWith('.js')
        ? route.fulfill({ contentType: 'text/javascript', body: source })
        : route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>bench</title>' }),
    );
    await page.goto('http://bench.test/');
    const session = await browser.newBrowserCDPSession();
    const { processInfo } = await session.send('SystemInfo.getProcessInfo');
    const pids = processInfo.filter(({ type }) => type === 'renderer').map(({ id }) => id);
    await page.evaluate(async (text) => {
      const bytes = await (
        await fetch(`data:application/octet-stream;base64,${text}`)
      ).arrayBuffer();
      globalThis.rgba = new Uint8ClampedArray(bytes);
    }, pixels);
    const before = peakMegabytes(pids);
    const times = await page.evaluate(
      (task) =>
        new Promise((done, failed) => {
          const worker = new Worker('/in-worker.js', { type: 'module' });
          worker.onerror = (fault) => failed(new Error(fault.message));
          worker.onmessage = ({ data }) => done(data);
          worker.postMessage({ ...task, photo: { ...task.photo, rgba: globalThis.rgba } });
        }),
      { work, rounds, photo: { width: photo.width, height: photo.height } },
    );
    const after = peakMegabytes(pids);
    const memory =
      before === null || after === null
        ? 'memory not measured'
        : `${Math.round(after - before)} MB more at the peak`;
    console.log(
      `  ${work}: first ${times[0].toFixed(0)}, warm ${median(times.slice(1)).toFixed(0)}; ${memory}`,
    );
    await context.close();
  }
  await browser.close();
}

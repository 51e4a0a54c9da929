// The chain and the whole reading in Chromium's worker: first call and warm, and the memory it takes. No peer:
// the ratios to other libraries are measured in Node, in one run with them.
import { readFileSync } from 'node:fs';
import { chromium } from 'playwright-core';
import { launchOptions } from '../support/chromium.mjs';
import { askPage, median, openBenchPage, workerSource } from './worker-in-chromium.mjs';

const rounds = 6;

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

/** Prints times in ms of each kind of work, each in a fresh page. */
export async function benchInChromium(photo) {
  const source = await workerSource('in-worker.ts');
  const browser = await chromium.launch(launchOptions());
  console.log(`\nin Chromium's worker (${browser.version()}), ${photo.width} x ${photo.height} px`);
  const pixels = Buffer.from(photo.rgba.buffer).toString('base64');
  for (const work of ['chain', 'reading', 'reading after warming up']) {
    const context = await browser.newContext();
    const page = await context.newPage();
    await openBenchPage(page, source);
    const session = await browser.newBrowserCDPSession();
    const { processInfo } = await session.send('SystemInfo.getProcessInfo');
    const pids = processInfo.filter(({ type }) => type === 'renderer').map(({ id }) => id);
    const { width, height } = photo;
    await page.evaluate(
      async ({ text, ...size }) => {
        const answer = await fetch(`data:application/octet-stream;base64,${text}`);
        globalThis.photo = { ...size, rgba: new Uint8ClampedArray(await answer.arrayBuffer()) };
      },
      { text: pixels, width, height },
    );
    const before = peakMegabytes(pids);
    const times = await askPage(page, { work, rounds });
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

// A reading stage by stage: processor time in Node (of all threads, so the collector's too), memory held above the
// pixels of the raster, and how both grow with the raster and the number of bands. No peer: ratios are elsewhere.
import sharp from 'sharp';

export const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];

/** Processor time of this process so far, ms. */
function processorMs() {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** Rows of a table: of every stage the first time, and of those after it the median and the least. */
export function stageRows([first, ...warm]) {
  const rows = Object.entries(first).map(([stage, ms]) => {
    const times = warm.map((one) => one[stage] ?? 0);
    return { stage, first: ms, median: median(times), least: Math.min(...times) };
  });
  const sum = (key) => rows.reduce((all, row) => all + row[key], 0);
  const all = { first: sum('first'), median: sum('median'), least: sum('least') };
  return [...rows, { stage: 'together', ...all }];
}

export function printRows(rows, more = () => '') {
  for (const { stage, first, median: middle, least } of rows) {
    const figures = [first, middle, least].map((ms) => ms.toFixed(0).padStart(6)).join('');
    console.log(`    ${stage.padEnd(20)}${figures}${more(stage)}`);
  }
}

const total = (times) => Object.values(times).reduce((sum, ms) => sum + ms, 0);

/** The exponent that takes one figure to the other as the work grows by `times`. */
const exponent = (from, to, times) => Math.log(to / from) / Math.log(times);

/** Watches what typed arrays, collected or not, hold above a raster's three planes at most: by stage, bytes. */
function watchMemory({ width, height }) {
  const most = {};
  const start = process.memoryUsage().arrayBuffers;
  const between = (stage, roomBytes) => {
    const held = process.memoryUsage().arrayBuffers - start + roomBytes; // the room's are not among them
    most[stage] = Math.max(most[stage] ?? 0, held - 12 * width * height);
  };
  return { most, between };
}

/** Of some readings after one to warm up: the least time, ms, and what it held above the raster at most, bytes. */
async function leastOf(stageTimes, photo, settings, rounds) {
  let [ms, bytes] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (let round = 0; round <= rounds; round++) {
    globalThis.gc?.();
    const { most, between } = watchMemory(photo);
    const times = await stageTimes(photo, { clock: processorMs, between, ...settings });
    if (round === 0) continue;
    ms = Math.min(ms, total(times));
    bytes = Math.min(bytes, Math.max(...Object.values(most)));
  }
  return { ms, bytes };
}

async function scaled({ width, height, rgba }, pixels) {
  const scale = Math.sqrt(pixels / (width * height));
  const size = { width: Math.round(width * scale), height: Math.round(height * scale) };
  const picture = sharp(rgba, { raw: { width, height, channels: 4 } });
  const { data } = await picture
    .resize({ ...size, fit: 'fill' })
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { ...size, rgba: new Uint8ClampedArray(data) };
}

async function printGrowth(stageTimes, photo) {
  console.log(
    '  as the raster grows (least of two; the exponent is that of one step to the next):',
  );
  let before = null;
  for (const megapixels of [0.5, 1, 2, 4]) {
    const picture = await scaled(photo, megapixels * 1e6);
    const longSidePx = Math.max(picture.width, picture.height);
    const { ms, bytes } = await leastOf(stageTimes, picture, { longSidePx }, 2);
    const grown = before ? `, exponent ${exponent(before, ms, 2).toFixed(2)}` : '';
    console.log(
      `    ${megapixels} Mpx ${ms.toFixed(0)}${grown}; ${(bytes / 1e6).toFixed(0)} MB at most`,
    );
    before = ms;
  }
  const half = await scaled(photo, 0.5e6);
  const byBands = [];
  for (const bands of [2, 3, 4, 5, 6, 7]) {
    const { ms } = await leastOf(stageTimes, half, { wishes: { bands } }, 2);
    byBands.push({ bands, ms });
  }
  const told = byBands.map(({ bands, ms }) => `${bands}: ${ms.toFixed(0)}`).join(', ');
  const grown = exponent(byBands[0].ms, byBands.at(-1).ms, 7 / 2).toFixed(2);
  console.log(`  0.5 Mpx by bands, ${told}; exponent ${grown}`);
}

/** Prints the tables; `stageTimes` is that of stage-times.ts, built as the app is. */
export async function benchStages(stageTimes, photo) {
  const rounds = 6;
  const readings = [];
  const held = {};
  for (let round = 0; round < rounds; round++) {
    const { most, between } = watchMemory(photo);
    readings.push(await stageTimes(photo, { clock: processorMs, between }));
    for (const [stage, bytes] of Object.entries(most)) {
      held[stage] = Math.max(held[stage] ?? 0, bytes);
    }
  }
  console.log(
    `\nA reading by stages, ${photo.width} x ${photo.height} px, ms of processor time: first, then warm, median and least; typed arrays not yet collected above the raster's three planes, MB at most`,
  );
  printRows(stageRows(readings), (stage) =>
    stage in held ? `${(Math.max(0, held[stage]) / 1e6).toFixed(0).padStart(6)} MB` : '',
  );
  await printGrowth(stageTimes, photo);
}

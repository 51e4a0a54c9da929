// `npm run bench [name ...]`: every tests/bench/*.bench.ts, ours against a peer. Interleaved, so that
// a busy machine disturbs both sides alike; the median of five rounds after one to warm up. Built as
// the app is built. Peers only the benches need are installed here, into the system's temporary folder.
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import sharp from 'sharp';
import { build } from 'vite';
import { benchInChromium } from './in-chromium.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const root = resolve(here, '..', '..');
const rounds = 5;
const peer = { name: '@techstark/opencv-js', version: '4.12.0-release.1' };

const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];
const spread = (list) => `${Math.min(...list).toFixed(1)}..${Math.max(...list).toFixed(1)}`;

async function timed(side) {
  const since = performance.now();
  await side.run();
  return performance.now() - since;
}

/** Wrapped in an object: the module has a `then`, so awaiting it would never end. */
async function loadOpenCv() {
  const folder = join(tmpdir(), `bench-peers-${peer.version}`);
  const home = join(folder, 'package.json');
  if (!existsSync(join(folder, 'node_modules', peer.name, 'package.json'))) {
    mkdirSync(folder, { recursive: true });
    writeFileSync(home, '{ "private": true }');
    const npm = ['install', '--no-audit', '--no-fund', `${peer.name}@${peer.version}`];
    execFileSync('npm', npm, { cwd: folder, stdio: ['ignore', 'ignore', 'inherit'] });
  }
  const openCv = createRequire(home)(peer.name);
  await new Promise((ready) => {
    if (openCv.Mat) ready();
    else openCv.onRuntimeInitialized = () => ready();
  });
  return { openCv };
}

async function loadPhoto() {
  const { data, info } = await sharp(join(root, 'tests', 'fixtures', 'mountain-snow.jpg'))
    .ensureAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, rgba: new Uint8ClampedArray(data) };
}

const asked = process.argv.slice(2);
const names = readdirSync(here)
  .filter((name) => name.endsWith('.bench.ts'))
  .map((name) => name.replace('.bench.ts', ''))
  .filter((name) => !asked.length || asked.includes(name))
  .sort();
const inChromium = !asked.length || asked.includes('in-chromium');
if (!names.length && !inChromium) {
  console.error(`No such bench: ${asked.join(', ')}`);
  process.exit(2);
}

// Inside node_modules: there the packages are found, and nothing is committed.
const outDir = join(root, 'node_modules', '.cache', 'bench');
if (names.length)
  await build({
    root,
    configFile: false,
    logLevel: 'error',
    build: {
      ssr: true,
      outDir,
      emptyOutDir: true,
      rollupOptions: {
        input: Object.fromEntries(names.map((name) => [name, join(here, `${name}.bench.ts`)])),
        output: { entryFileNames: '[name].js' },
      },
    },
  });

console.log(
  `Node ${process.version}, ${process.platform} ${process.arch}; times in ms, median of ${rounds}`,
);
const photo = await loadPhoto();
let loaded;
for (const name of names) {
  const module = await import(pathToFileURL(join(outDir, `${name}.js`)).href);
  if (module.needsOpenCv) loaded ??= await loadOpenCv();
  const one = await module.bench({ photo, ...loaded });
  const times = { ours: [], peer: [] };
  for (let round = 0; round <= rounds; round++) {
    const pair = { ours: await timed(one.ours), peer: await timed(one.peer) };
    if (round === 0) continue; // warms up both
    times.ours.push(pair.ours);
    times.peer.push(pair.peer);
  }
  const ratio = median(times.peer) / median(times.ours);
  const aim = one.aim ? ` (aim: at least ${one.aim})` : '';
  console.log(`\n${one.name}: ${one.work}`);
  console.log(`  ours, ${one.ours.name}: ${median(times.ours).toFixed(1)} (${spread(times.ours)})`);
  console.log(`  peer, ${one.peer.name}: ${median(times.peer).toFixed(1)} (${spread(times.peer)})`);
  console.log(`  peer / ours: ${ratio.toFixed(2)}${aim}; ${one.agreement}`);
}

if (inChromium) await benchInChromium(photo);

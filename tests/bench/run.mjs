// `npm run bench [-- name ...]`: every tests/bench/*.bench.ts, ours against a peer. Interleaved, so that
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
import { assembly } from '../../app/build/assembly.mjs';
import { benchComparing } from './comparing.mjs';
import { benchInChromium } from './in-chromium.mjs';
import { benchStages, median } from './stages.mjs';

const folder = dirname(fileURLToPath(import.meta.url));
const root = resolve(folder, '..', '..');
const rounds = 5;
const peer = { name: '@techstark/opencv-js', version: '4.12.0-release.1' };

/** Quick work is told in tenths of a ms and less. */
const said = (ms) => ms.toFixed(ms < 10 ? 2 : 1);
const spread = (list) => `${said(Math.min(...list))}..${said(Math.max(...list))}`;

async function timed(side) {
  const since = performance.now();
  await side.run();
  return performance.now() - since;
}

/** Wrapped in an object: the module has a `then`, so awaiting it would never end. */
async function loadOpenCv() {
  const home = join(tmpdir(), `bench-peers-${peer.version}`);
  const manifest = join(home, 'package.json');
  if (!existsSync(join(home, 'node_modules', peer.name, 'package.json'))) {
    mkdirSync(home, { recursive: true });
    writeFileSync(manifest, '{ "private": true }');
    const npm = ['install', '--no-audit', '--no-fund', `${peer.name}@${peer.version}`];
    execFileSync('npm', npm, { cwd: home, stdio: ['ignore', 'ignore', 'inherit'] });
  }
  const openCv = createRequire(manifest)(peer.name);
  await new Promise((ready) => {
    if (openCv.Mat) ready();
    else openCv.onRuntimeInitialized = () => ready();
  });
  return { openCv };
}

async function loadPhoto(name) {
  const { data, info } = await sharp(join(root, 'tests', 'fixtures', name))
    .ensureAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, rgba: new Uint8ClampedArray(data) };
}

async function compare({ name, work, ours, peer, aim, agreement }) {
  const times = { ours: [], peer: [] };
  for (let round = 0; round <= rounds; round++) {
    const pair = { ours: await timed(ours), peer: await timed(peer) };
    if (round === 0) continue; // warms up both
    times.ours.push(pair.ours);
    times.peer.push(pair.peer);
  }
  const ratio = median(times.peer) / median(times.ours);
  console.log(`\n${name}: ${work}`);
  console.log(`  ours, ${ours.name}: ${said(median(times.ours))} (${spread(times.ours)})`);
  console.log(`  peer, ${peer.name}: ${said(median(times.peer))} (${spread(times.peer)})`);
  const wanted = aim ? ` (aim: at least ${aim})` : '';
  console.log(`  peer / ours: ${ratio.toFixed(2)}${wanted}; ${agreement}`);
}

const asked = process.argv.slice(2);
const known = readdirSync(folder)
  .filter((name) => name.endsWith('.bench.ts'))
  .map((name) => name.replace('.bench.ts', ''))
  .sort();
/** What has no peer. */
const withoutPeer = ['stages', 'plan-stages', 'in-chromium', 'comparing'];
const unknown = asked.filter((name) => ![...withoutPeer, ...known].includes(name));
if (unknown.length) {
  console.error(
    `No such bench: ${unknown.join(', ')}. There are: ${[...known, ...withoutPeer].join(', ')}`,
  );
  process.exit(2);
}
const isAsked = (name) => !asked.length || asked.includes(name);
const names = known.filter(isAsked);
const inputs = Object.fromEntries(
  names.map((name) => [`${name}.bench`, join(folder, `${name}.bench.ts`)]),
);
if (isAsked('stages')) inputs.stages = join(folder, 'stage-times.ts');
if (isAsked('plan-stages')) inputs['plan-stages'] = join(folder, 'plan-stages.ts');

// Inside node_modules: there the packages are found, and nothing is committed.
const outDir = join(root, 'node_modules', '.cache', 'bench');
if (Object.keys(inputs).length)
  await build({
    root,
    configFile: false,
    plugins: [assembly()],
    logLevel: 'error',
    build: {
      ssr: true,
      outDir,
      emptyOutDir: true,
      rollupOptions: {
        input: inputs,
        output: { entryFileNames: '[name].js' },
      },
    },
  });

console.log(
  `Node ${process.version}, ${process.platform} ${process.arch}; times in ms, median of ${rounds} (least..most)`,
);
const photo = await loadPhoto('mountain-snow.jpg');
let loaded;
for (const name of names) {
  const file = await import(pathToFileURL(join(outDir, `${name}.bench.js`)).href);
  if (file.needsOpenCv) loaded ??= await loadOpenCv();
  for (const bench of await file.benches({ photo, ...loaded })) await compare(bench);
}
if (isAsked('stages')) {
  const { stageTimes } = await import(pathToFileURL(join(outDir, 'stages.js')).href);
  await benchStages(stageTimes, photo);
}
if (isAsked('plan-stages')) {
  const { benchPlanStages } = await import(pathToFileURL(join(outDir, 'plan-stages.js')).href);
  await benchPlanStages({ 'mountain snow': photo }, console.log);
}
if (isAsked('in-chromium')) await benchInChromium(photo);
if (isAsked('comparing')) await benchComparing();

// `npm run bench [name ...]`: every tests/bench/*.bench.ts, ours against a peer. Interleaved, so that
// a busy machine disturbs both sides alike; the median of five rounds after one to warm up.
import { readdirSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

const here = dirname(fileURLToPath(import.meta.url));
const root = resolve(here, '..', '..');
const rounds = 5;

const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];
const spread = (list) => `${Math.min(...list).toFixed(1)}..${Math.max(...list).toFixed(1)}`;

async function timed(side) {
  const since = performance.now();
  await side.run();
  return performance.now() - since;
}

const asked = process.argv.slice(2);
const files = readdirSync(here)
  .filter((name) => name.endsWith('.bench.ts'))
  .filter((name) => !asked.length || asked.includes(name.replace('.bench.ts', '')))
  .sort();
if (!files.length) {
  console.error(`No such bench: ${asked.join(', ')}`);
  process.exit(2);
}

console.log(
  `Node ${process.version}, ${process.platform} ${process.arch}; times in ms, median of ${rounds}`,
);
for (const file of files) {
  const { module } = await runnerImport(join(here, file), {
    root,
    configFile: false,
    logLevel: 'error',
  });
  const { name, work, ours, peer, agreement } = await module.bench();
  const times = { ours: [], peer: [] };
  for (let round = 0; round <= rounds; round++) {
    const pair = { ours: await timed(ours), peer: await timed(peer) };
    if (round === 0) continue; // warms up both
    times.ours.push(pair.ours);
    times.peer.push(pair.peer);
  }
  const ratio = median(times.peer) / median(times.ours);
  console.log(`\n${name}: ${work}`);
  console.log(`  ours, ${ours.name}: ${median(times.ours).toFixed(1)} (${spread(times.ours)})`);
  console.log(`  peer, ${peer.name}: ${median(times.peer).toFixed(1)} (${spread(times.peer)})`);
  console.log(`  peer / ours: ${ratio.toFixed(2)}; ${agreement}`);
}

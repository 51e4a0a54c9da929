// `node tests/bench/palette-in-chromium.mjs`: the search for a palette in Chromium's worker. 33 paints, at most 5,
// 12 targets: the first search in a fresh page, and warm; the bytes of its tables.
import { askWorker, median } from './worker-in-chromium.mjs';

const megabytes = (bytes) => `${(bytes / 1e6).toFixed(1)} MB`;
const found = await askWorker('palette-in-worker.ts', { rounds: 5 });
console.log(
  `palette search in Chromium's worker (${found.version}): ${found.paints} paints, at most 5, ${found.targets} targets, cost ${found.cost.toFixed(3)}`,
);
console.log(
  `  first ${found.cold.toFixed(0)} ms (aim: 5000), warm ${median(found.warm).toFixed(0)} ms (aim: 2000; ${found.warm.map((each) => each.toFixed(0)).join(', ')})`,
);
console.log(
  `  mixes ${megabytes(found.libraryBytes)}, tables ${megabytes(found.tableBytes)} (aim: under 100 MB together)`,
);

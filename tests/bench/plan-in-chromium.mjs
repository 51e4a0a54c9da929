// `node tests/bench/plan-in-chromium.mjs`: the wash plan from a reading in Chromium's worker.
import { askWorker, median } from './worker-in-chromium.mjs';

const { times, version } = await askWorker('plan-in-worker.ts', { rounds: 7 });
console.log(`plan from a reading in Chromium's worker (${version}), ms`);
for (const { name, mixes, searched, chosen, changed } of times) {
  const planned = median(chosen);
  console.log(
    `  ${name}: paints searched as well ${searched.toFixed(0)}; paints chosen ${planned.toFixed(0)} (aim: 300), ${(planned / mixes).toFixed(1)} a mix (${mixes}); a change of hers ${median(changed).toFixed(0)}`,
  );
}

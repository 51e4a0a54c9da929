// `npm run measures`: how near the plans come to what they promise, photograph by photograph. Figures, no times
// but the rough ones of this machine; nothing is compared with a limit here, the tests do that on kept readings.
import { resolve } from 'node:path';
import { runnerImport } from 'vite';

const here = import.meta.dirname;
const { module } = await runnerImport(resolve(here, 'plan-measures.ts'), {
  root: resolve(here, '..', '..'),
  configFile: false,
  logLevel: 'silent',
});
await module.measurePlans();

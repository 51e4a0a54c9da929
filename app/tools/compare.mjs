// `npm run --silent compare -- PHOTO --plan PLAN.json ...`: a sheet beside its plan without a browser, loaded as the
// plan command is.
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';
import { assembly } from '../build/assembly.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const { module } = await runnerImport(join(here, 'compare', 'run-compare.ts'), {
  root: resolve(here, '..', '..'),
  configFile: false,
  plugins: [assembly()],
  logLevel: 'silent',
});
process.exitCode = await module.runCompare(process.argv.slice(2));

// `npm run --silent plan -- PHOTO ...`: the whole chain without a browser. Node can't run TypeScript
// by itself, so Vite loads it as it does in development: no build, and nothing of Vite's on stdout.
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';
import { assembly } from '../build/assembly.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const { module } = await runnerImport(join(here, 'plan', 'run-plan.ts'), {
  root: resolve(here, '..', '..'),
  configFile: false,
  plugins: [assembly()],
  logLevel: 'silent',
});
process.exitCode = await module.runPlan(process.argv.slice(2));

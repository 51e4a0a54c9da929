// `npm run measures`: how near plans and paints come to what they promise. Figures, no times but the rough ones of
// this machine; nothing is compared with a limit here, the tests do that on kept readings. `-- squeezed hand` runs
// those measures only.
import { resolve } from 'node:path';
import { runnerImport } from 'vite';
import { assembly } from '../../app/build/assembly.mjs';

const here = import.meta.dirname;
const { module } = await runnerImport(resolve(here, 'measures.ts'), {
  root: resolve(here, '..', '..'),
  configFile: false,
  plugins: [assembly()],
  logLevel: 'silent',
});
const wanted = process.argv.slice(2);
for (const [name, measure] of module.measures)
  if (wanted.length === 0 || wanted.includes(name)) await measure();

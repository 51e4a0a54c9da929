// Machine code for pixel loops: `import code from './x.ts?assembly'` is the WebAssembly of that AssemblyScript, as
// base64 within the script. So nothing has to be fetched, and wherever the script is kept its machine code is too.
// Compiling takes seconds, so what was compiled stays under node_modules/.cache.
import { createHash } from 'node:crypto';
import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const top = resolve(dirname(fileURLToPath(import.meta.url)), '..', '..');
const cache = join(top, 'node_modules', '.cache', 'assembly');

const options = [
  ...['-O3', '--runtime', 'stub', '--noAssert'],
  ...['--enable', 'simd', '--importMemory', '--outFile', 'out.wasm'],
];

/** Throws what the compiler has to say. */
async function compile(name, source) {
  const { main } = await import('assemblyscript/asc');
  let code;
  const { error, stderr } = await main([name, ...options], {
    readFile: (asked) => (asked === name ? source : null),
    writeFile: (_, contents) => {
      code = contents;
    },
    listFiles: () => [],
  });
  if (error || !code) throw new Error(`${name}: ${stderr}`, { cause: error });
  return code;
}

/** The WebAssembly of one file, which imports nothing but its memory. */
export async function compileAssembly(file) {
  const source = await readFile(file, 'utf8');
  const compiler = await readFile(join(top, 'node_modules/assemblyscript/package.json'), 'utf8');
  const made = createHash('sha256')
    .update([compiler, ...options, source].join('\0'))
    .digest('hex');
  const kept = join(cache, `${made}.wasm`);
  try {
    return await readFile(kept);
  } catch {
    const code = Buffer.from(await compile(basename(file), source));
    await mkdir(cache, { recursive: true });
    const begun = `${kept}.${process.pid}`;
    await writeFile(begun, code); // moved when whole: others may look for it meanwhile
    await rename(begun, kept);
    return code;
  }
}

const asked = '?assembly';

/** @returns {import('vite').Plugin} */
export const assembly = () => ({
  name: 'assembly',
  enforce: 'pre',
  async load(id) {
    if (!id.endsWith(asked)) return null;
    const code = await compileAssembly(id.slice(0, -asked.length));
    return `export default '${code.toString('base64')}';`;
  },
});

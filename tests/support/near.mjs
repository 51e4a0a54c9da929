// `npm run near`: the unit tests nearest to what was changed, for an answer within seconds; `npm run near -- FILE...`
// for files named. Near are tests that import such a file themselves, and tests that bear the name of such a file
// or of a file that imports it. It is no proof: `npm run unit` also runs what is reached from farther off.
import { execFileSync, spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const top = resolve(dirname(fileURLToPath(import.meta.url)), '..', '..');
const isTest = (file) => /\.test\.tsx?$/.test(file);
/** `x.topic.test.ts` bears the name of `x.ts`. */
const nameOf = (file) => basename(file).split('.')[0];

/** Files of the tests and the source from the project's folder, each with the files it imports. */
export function importsOf(folder = top) {
  const files = ['app', 'workers', 'tests/unit', 'tests/support'].flatMap((part) =>
    readdirSync(join(folder, part), { recursive: true })
      .filter((file) => /\.tsx?$/.test(file))
      .map((file) => join(part, file).replaceAll('\\', '/')),
  );
  return new Map(
    files.map((file) => {
      const text = readFileSync(join(folder, file), 'utf8');
      const found = [...text.matchAll(/(?:\bfrom|\bimport)\s*\(?\s*'(\.[^']+)'/g)];
      return [file, found.map(([, path]) => join(dirname(file), path).replaceAll('\\', '/'))];
    }),
  );
}

/** The tests nearest to `changed`, sorted; `imports` as `importsOf` answers it. */
export function nearTests(changed, imports) {
  const direct = [...imports].filter(([, to]) => to.some((file) => changed.includes(file)));
  const names = new Set([...changed, ...direct.map(([file]) => file)].map(nameOf));
  const importing = new Set(direct.map(([file]) => file));
  const near = (test) => changed.includes(test) || importing.has(test) || names.has(nameOf(test));
  return [...imports.keys()].filter((file) => isTest(file) && near(file)).sort();
}

const git = (...args) =>
  execFileSync('git', args, { cwd: top, encoding: 'utf8' }).split('\n').filter(Boolean);

function run(named) {
  const changed = named.length
    ? named.map((file) => file.replaceAll('\\', '/').replace(/^\.\//, ''))
    : [...git('diff', '--name-only', 'HEAD'), ...git('ls-files', '--others', '--exclude-standard')];
  const tests = nearTests(changed, importsOf());
  console.log(`${tests.length} test files near ${changed.length} files`);
  if (tests.length === 0) return 0;
  const vitest = join(top, 'node_modules/vitest/vitest.mjs');
  const args = [vitest, 'run', '--config', 'tests/vitest.config.ts', '--project', 'node', ...tests];
  return spawnSync(process.execPath, args, { cwd: top, stdio: 'inherit' }).status ?? 1;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href)
  process.exit(run(process.argv.slice(2)));

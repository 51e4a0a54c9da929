import { readdirSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type BenchFile, notCompared } from '../../bench/bench.ts';
import { seededPicture } from '../../bench/seeded-picture.ts';
import { importLines } from './import-lines.ts';
import { type SourceFile, sourceFiles, top } from './source-files.ts';
import { withoutComments } from './without-comments.ts';

const folder = 'tests/bench';
const fileNames = readdirSync(join(top, folder));
const benchNames = fileNames.filter((name) => name.endsWith('.bench.ts'));

// Once through each, so that they cannot rot; the times are not judged here. A library that only the
// bench command installs is left out: then our side runs alone.
test.each(benchNames)('%s still runs', async (name) => {
  const { benches, needsOpenCv } = (await import(join(top, folder, name))) as BenchFile;
  const found = await benches({ photo: seededPicture(160, 120, 7) });
  expect(found).not.toEqual([]);
  for (const { ours, peer, agreement } of found) {
    expect(await ours.run()).not.toBe(undefined);
    if (peer) expect(await peer.run()).not.toBe(undefined);
    else expect({ needsOpenCv, agreement }).toEqual({ needsOpenCv: true, agreement: notCompared });
    expect(agreement).not.toMatch(/NaN|Infinity|undefined/);
  }
});

/** Where the product starts: its page and its workers. */
const isEntry = (path: string): boolean =>
  path === 'app/main.tsx' || /^workers\/[\w-]+\.worker\.ts$/.test(path);

/** The files that the product's page and workers load. */
function filesOfProduct(files: readonly SourceFile[]): Set<string> {
  const byPath = new Map(files.map((file) => [file.path, file]));
  const loaded = new Set<string>();
  const waiting = files.filter(({ path }) => isEntry(path));
  for (let file = waiting.pop(); file; file = waiting.pop()) {
    if (loaded.has(file.path)) continue;
    loaded.add(file.path);
    for (const { target } of importLines(file)) {
      const next = byPath.get(target);
      if (next) waiting.push(next);
    }
  }
  return loaded;
}

const importOfNames = /import\s+(type\s+)?\{([^}]*)\}\s+from\s+'(\.[^']+)'/g;

/** Values (no types) of app/ and workers/ that a file imports, but for how it is built: where they are, and their names. */
function valuesImported({ path, text }: SourceFile): { from: string; name: string }[] {
  return [...withoutComments(text).matchAll(importOfNames)].flatMap(
    ([, isType, list = '', to = '']) => {
      const from = posix.join(posix.dirname(path), to);
      if (isType || !/^(app\/(?!build\/)|workers\/)/.test(from)) return [];
      const names = list.split(',').map((each) => each.trim().split(' as ')[0] ?? '');
      return names
        .filter((name) => name && !name.startsWith('type '))
        .map((name) => ({ from, name }));
    },
  );
}

/** What benches time although the product's page and workers never call it, as sentences. */
function onlyBenched(benches: readonly SourceFile[], product: readonly SourceFile[]): string[] {
  const loaded = filesOfProduct(product);
  const code = product
    .filter(({ path }) => loaded.has(path))
    .map(({ text }) => withoutComments(text))
    .join('\n');
  return benches.flatMap((bench) =>
    valuesImported(bench)
      // Once is its declaration, the second time somebody uses it.
      .filter(({ from, name }) => {
        const uses = code.match(new RegExp(`\\b${name}\\b`, 'g'))?.length ?? 0;
        return !loaded.has(from) || uses < 2;
      })
      .map(({ from, name }) => `${bench.path}: ${name} of ${from}`),
  );
}

describe('benches time only what the product runs', () => {
  test('all they import of it is used by its page or its workers', async () => {
    const product = await sourceFiles(['app', 'workers'], ['.ts', '.tsx']);
    const benches = fileNames.map((name) => {
      const path = `${folder}/${name}`;
      return { path, text: readFileSync(join(top, path), 'utf8') };
    });
    expect(benches.flatMap(valuesImported).length).toBeGreaterThan(20);
    expect(onlyBenched(benches, product)).toEqual([]);
  });

  const product = [
    { path: 'workers/x.worker.ts', text: "import { used } from './used.ts';\nused();" },
    { path: 'workers/used.ts', text: 'export function used() {}\nexport function idle() {}' },
    { path: 'workers/unused.ts', text: "import { used } from './used.ts';\nused();" },
  ];
  test.each([
    ["import { used } from '../../workers/used.ts';", 0],
    ["import { type Idle, used } from '../../workers/used.ts';", 0],
    ["import type { Idle } from '../../workers/unused.ts';", 0],
    ["import {\n  idle,\n  used,\n} from '../../workers/used.ts';", 1],
    ["import { used } from '../../workers/unused.ts';", 1],
  ])('%j is refused %i times', (text, count) => {
    const bench = { path: 'tests/bench/x.bench.ts', text };
    expect(onlyBenched([bench], product)).toHaveLength(count);
  });
});

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { top } from './source-files.ts';

const lock = readFileSync(join(top, 'package-lock.json'), 'utf8');
const { dependencies, devDependencies } = JSON.parse(
  readFileSync(join(top, 'package.json'), 'utf8'),
) as Record<'dependencies' | 'devDependencies', Record<string, string>>;

const hosts = (text: string) => text.split('\n').filter((line) => line.includes('"resolved"'));
const loose = (wanted: Record<string, string>) =>
  Object.entries(wanted).filter(([, version]) => !/^\d+\.\d+\.\d+$/.test(version));

test('the lock file names no download host', () => {
  expect(hosts(lock)).toEqual([]);
  expect(hosts('"a": {\n  "resolved": "https://a.example/a.tgz"\n}')).toHaveLength(1);
});

test('every version is exact', () => {
  expect(loose({ ...dependencies, ...devDependencies })).toEqual([]);
  expect(loose({ a: '^1.0.0', b: '1.0.0', c: 'latest' })).toHaveLength(2);
});

test('no package runs a script of its own when it is installed', () => {
  const scripted = (text: string): string[] =>
    Object.entries(JSON.parse(text).packages as Record<string, { hasInstallScript?: boolean }>)
      .filter(([, { hasInstallScript }]) => hasInstallScript)
      .map(([name]) => name);
  expect(scripted(lock)).toEqual([]);
  expect(scripted('{ "packages": { "a": { "hasInstallScript": true }, "b": {} } }')).toEqual(['a']);
});

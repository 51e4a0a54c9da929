import { execFileSync } from 'node:child_process';
import { expect, test } from 'vitest';
import { top } from './source-files.ts';

const agreed = [
  'DEVELOPERS.md',
  'LICENSE',
  'README.md',
  'app',
  'icons',
  'manifest.webmanifest',
  'package-lock.json',
  'package.json',
  'tests',
  'tsconfig.json',
  'workers',
];

const topNames = (paths: readonly string[]) =>
  [...new Set(paths.map((path) => path.split('/')[0] ?? path))]
    .filter((name) => name !== '' && !name.startsWith('.'))
    .sort();

test('the top level holds exactly the agreed names', () => {
  // safe.directory: a checkout may belong to another user than the one who runs the tests.
  const listed = execFileSync(
    'git',
    ['-c', `safe.directory=${top}`, 'ls-files', '-z', '--cached', '--others', '--exclude-standard'],
    { cwd: top, encoding: 'utf8' },
  );
  expect(topNames(listed.split('\0'))).toEqual(agreed);
});

test('a stray name would be seen', () => {
  const paths = [...agreed, 'vite.config.ts', '.gitignore', 'scripts/run.sh'];
  expect(topNames(paths).filter((name) => !agreed.includes(name))).toEqual([
    'scripts',
    'vite.config.ts',
  ]);
});

import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';
import { expect, test } from '@playwright/test';

const top = resolve(import.meta.dirname, '..', '..');

test('10,000 copies spoilt in as many ways are refused whole or brought back whole', () => {
  const run = spawnSync(
    process.execPath,
    [
      resolve(top, 'node_modules/vitest/vitest.mjs'),
      ...['run', '--config', 'tests/vitest.config.ts', '--project', 'node'],
      'tests/unit/storage/backup/restore-backup.fuzz.test.ts',
    ],
    { cwd: top, encoding: 'utf8', env: { ...process.env, RUNS: '50', NO_COLOR: '1' } },
  );
  console.log(/spoilt copies: .*/.exec(run.stdout)?.[0] ?? run.stdout);
  expect(run.status).toBe(0);
});

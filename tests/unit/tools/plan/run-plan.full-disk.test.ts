import { spawnSync } from 'node:child_process';
import { closeSync, existsSync, openSync } from 'node:fs';
import { expect, test } from 'vitest';
import { top } from '../../../support/plan/run-command.ts';

// A device that is always full (Linux, full(4)).
test.skipIf(!existsSync('/dev/full'))('a full disk under its answer: one line, exit 2', () => {
  const full = openSync('/dev/full', 'w');
  const run = spawnSync(process.execPath, ['app/tools/plan.mjs', '--help'], {
    ...{ cwd: top, encoding: 'utf8', stdio: ['ignore', full, 'pipe'] },
  });
  closeSync(full);
  expect([run.status, run.stderr]).toEqual([
    2,
    "plan: the answer can't be written: make room on the disk\n",
  ]);
});

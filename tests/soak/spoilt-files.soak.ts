import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';
import { expect, test } from '@playwright/test';

const top = resolve(import.meta.dirname, '..', '..');

interface Spoilt {
  readonly file: string;
  readonly project: 'node' | 'chromium';
  /** So many times the sample of `npm test`. */
  readonly times: number;
  /** The lines it tells its figures in. */
  readonly told: RegExp;
}

const all: Readonly<Record<string, Spoilt>> = {
  '10,000 spoilt copies are refused whole or brought back whole': {
    file: 'tests/unit/storage/backup/restore-backup.fuzz.test.ts',
    project: 'node',
    times: 50,
    told: /spoilt copies: .*/g,
  },
  '200 MB in a copy of under 1 MB are refused under 64 MB more memory': {
    file: 'tests/unit/storage/backup/open-backup.test.ts',
    project: 'node',
    times: 1,
    told: /.*MB more memory/g,
  },
  '500 spoilt photos are read by the command, or refused in a sentence': {
    file: 'tests/unit/tools/plan/load-photo.fuzz.test.ts',
    project: 'node',
    times: 100,
    told: /spoilt photos.*/g,
  },
  '500 spoilt photos are read by the app, or refused in a sentence': {
    file: 'tests/browser/analysis-worker.fuzz.test.ts',
    project: 'chromium',
    times: 100,
    told: /spoilt photos.*/g,
  },
  '500 spoilt files of paints are planned with, or refused in a line': {
    file: 'tests/unit/tools/plan/own-paints-file.fuzz.test.ts',
    project: 'node',
    times: 50,
    told: /spoilt files of paints.*/g,
  },
  '100 puts that fail at random: nothing acknowledged is lost': {
    file: 'tests/unit/state/session/easel.failing-puts.test.ts',
    project: 'node',
    times: 14,
    told: /failing puts.*/g,
  },
};

for (const [name, { file, project, times, told }] of Object.entries(all))
  test(name, () => {
    const run = spawnSync(
      process.execPath,
      [
        resolve(top, 'node_modules/vitest/vitest.mjs'),
        ...['run', '--config', 'tests/vitest.config.ts', '--project', project, file],
      ],
      { cwd: top, encoding: 'utf8', env: { ...process.env, RUNS: String(times), NO_COLOR: '1' } },
    );
    console.log(run.stdout.match(told)?.join('\n') ?? run.stdout + run.stderr);
    expect(run.status).toBe(0);
  });

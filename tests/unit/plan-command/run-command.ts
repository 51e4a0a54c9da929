import { spawn } from 'node:child_process';
import { resolve } from 'node:path';

export const top = resolve(import.meta.dirname, '../../..');
export const casePath = (name: string): string => resolve(top, 'tests/fixtures/cases', name);

export interface Ran {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the command as `npm run --silent plan -- ...` does, in a process of its own. */
export function runCommand(...args: string[]): Promise<Ran> {
  return new Promise((done, fail) => {
    const child = spawn(process.execPath, ['app/tools/plan.mjs', ...args], { cwd: top });
    let stdout = '';
    let stderr = '';
    child.stdout.on('data', (bytes) => {
      stdout += bytes;
    });
    child.stderr.on('data', (bytes) => {
      stderr += bytes;
    });
    child.on('error', fail);
    child.on('close', (code) => done({ code, stdout, stderr }));
  });
}

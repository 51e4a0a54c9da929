import { spawn } from 'node:child_process';
import { resolve } from 'node:path';
import { vi } from 'vitest';
import { runPlan } from '../../../app/tools/plan/run-plan.ts';

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

/** What is written to a stream of this process meanwhile; until `vi.restoreAllMocks()`. */
export function heard(stream: NodeJS.WriteStream): string[] {
  const words: string[] = [];
  vi.spyOn(stream, 'write').mockImplementation((...told: unknown[]) => {
    words.push(String(told[0]));
    const done = told.at(-1);
    if (typeof done === 'function') done();
    return true;
  });
  return words;
}

/** The same command in this process: no start to wait for, and its tables are warm from the run before. */
export async function runHere(...args: string[]): Promise<Ran> {
  const [out, wrong] = [heard(process.stdout), heard(process.stderr)];
  try {
    const code = await runPlan(args);
    return { code, stdout: out.join(''), stderr: wrong.join('') };
  } finally {
    vi.restoreAllMocks();
  }
}

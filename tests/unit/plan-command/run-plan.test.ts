import { afterEach, expect, test, vi } from 'vitest';
import { runPlan } from '../../../app/tools/plan/run-plan.ts';

/** What is written to a stream of this process meanwhile. */
function heard(stream: NodeJS.WriteStream): string[] {
  const words: string[] = [];
  vi.spyOn(stream, 'write').mockImplementation((...told: unknown[]) => {
    words.push(String(told[0]));
    const done = told.at(-1);
    if (typeof done === 'function') done();
    return true;
  });
  return words;
}
afterEach(() => void vi.restoreAllMocks());

test('--help tells of every option and ends well', async () => {
  const [out, wrong] = [heard(process.stdout), heard(process.stderr)];
  expect(await runPlan(['--help'])).toBe(0);
  for (const option of [
    '--sheet',
    '--bands',
    '--palette',
    '--paints FILE.json',
    '--evening',
    '--dryer',
    '--washes',
    '--paper',
    '--out',
  ])
    expect(out.join('')).toContain(option);
  expect(wrong).toEqual([]);
});

test('a file of paints that is not there: one line, exit code 2, before the photo is looked at', async () => {
  const [out, wrong] = [heard(process.stdout), heard(process.stderr)];
  expect(await runPlan(['no-such.jpg', '--paints', 'none.json'])).toBe(2);
  expect(out).toEqual([]);
  expect(wrong).toEqual(['plan: --paints none.json: there is no such file\n']);
});

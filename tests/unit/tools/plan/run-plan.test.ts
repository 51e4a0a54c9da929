import { afterEach, expect, test, vi } from 'vitest';
import { runPlan } from '../../../../app/tools/plan/run-plan.ts';
import { casePath, heard, runHere } from '../../../support/plan/run-command.ts';

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
    '--subject',
    '--passages',
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

test.each([
  [['no-such.jpg'], /no such file/],
  [[casePath('text-named.jpg')], /not a picture/],
  [[casePath('exif-orient-1.jpg'), '--paints', 'no-such-paint'], /no paint "no-such-paint"/],
])('%s: one line on stderr, exit 2', async (args, cause) => {
  const { code, stdout, stderr } = await runHere(...args);
  expect([code, stdout]).toEqual([2, '']);
  expect(stderr).toMatch(cause);
  expect(stderr.trim().split('\n')).toHaveLength(1);
});

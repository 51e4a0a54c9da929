import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterEach, expect, test, vi } from 'vitest';
import { runPlan } from '../../../../app/tools/plan/run-plan.ts';
import { casePath, heard, runHere, top } from '../../../support/plan/run-command.ts';

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

// A-BIG-7, and a hole as of a broken card: what the app says of a photo, the command says too
test('of a panorama with a hole it says that part of it is missing, and how little is on the sheet', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'holed-'));
  const file = join(folder, 'panorama.jpg');
  const dahlia = sharp(join(top, 'tests/fixtures/dahlia.jpg'));
  const bytes = await dahlia.resize(8000, 200, { fit: 'fill' }).jpeg({ quality: 92 }).toBuffer();
  bytes.fill(0, bytes.length >> 1, (bytes.length >> 1) + 512);
  writeFileSync(file, bytes);
  const { code, stdout } = await runHere(file, '--paints', 'pb29-ultramarine-blue');
  rmSync(folder, { recursive: true });
  expect(code).toBe(0);
  const { warnings } = JSON.parse(stdout) as { warnings: { code: string; text: string }[] };
  expect(warnings.slice(0, 2)).toEqual([
    { code: 'part-missing', text: expect.stringMatching(/^Part of this photo is missing/) },
    {
      code: 'small-picture',
      text: expect.stringMatching(/^Of this photo only 3 % is on your sheet/),
    },
  ]);
});

import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { noticeOf, packageOf } from '../../../app/build/licences.ts';
import { top } from '../house/source-files.ts';

test.each([
  ['/a/node_modules/preact/dist/preact.mjs', 'preact'],
  ['/a/node_modules/@preact/signals/dist/signals.mjs?x', '@preact/signals'],
  ['C:\\a\\node_modules\\idb\\build\\index.js', 'idb'],
  ['/a/node_modules/one/node_modules/two/index.js', 'two'],
  ['\0vite/preload-helper.js', 'vite'],
  ['\0rolldown/runtime.js', 'rolldown'],
  ['/a/app/main.tsx', null],
])('%j comes from %s', (id, name) => {
  expect(packageOf(id)).toBe(name);
});

test('a notice is the licence as it lies in the package, with its name and version', async () => {
  const text = readFileSync(join(top, 'node_modules/comlink/LICENSE'), 'utf8').trim();
  const notice = await noticeOf(top, 'comlink');
  expect(notice).toMatch(/^comlink 4\.\d+\.\d+ \(Apache-2\.0\)\n\n/);
  expect(notice.endsWith(text)).toBe(true);
});

test('of the bundler only its own licence goes on, not those of its release', async () => {
  const notice = await noticeOf(top, 'vite');
  expect(notice).toContain('MIT License');
  expect(notice).not.toContain('Bundled dependencies');
});

test('a package without a licence file stops the build', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'firstwash-'));
  mkdirSync(join(folder, 'node_modules/bare'), { recursive: true });
  writeFileSync(join(folder, 'node_modules/bare/package.json'), '{"version":"1.0.0"}');
  await expect(noticeOf(folder, 'bare')).rejects.toThrow(
    'bare 1.0.0 is bundled and has no licence',
  );
  writeFileSync(join(folder, 'node_modules/bare/Licence.txt'), 'Be kind.\n');
  expect(await noticeOf(folder, 'bare')).toBe('bare 1.0.0\n\nBe kind.');
  rmSync(folder, { recursive: true });
});

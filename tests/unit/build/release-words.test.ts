import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { buildName, newestChanges } from '../../../app/build/release-words.ts';
import { top } from '../house/source-files.ts';

const folder = mkdtempSync(join(tmpdir(), 'firstwash-'));
afterAll(() => rmSync(folder, { recursive: true }));

test('a build is named by its version and by all it is made of', async () => {
  for (const name of ['icons', 'workers', 'manifest.webmanifest', 'package-lock.json', '.github'])
    cpSync(join(top, name), join(folder, name), { recursive: true });
  cpSync(join(top, 'app/main.tsx'), join(folder, 'app/main.tsx'));
  const name = await buildName(folder, '1.2.3');
  expect(name).toMatch(/^1\.2\.3\+[0-9a-f]{7}$/);
  expect(await buildName(folder, '1.2.3')).toBe(name);
  writeFileSync(join(folder, 'app/main.tsx'), 'changed');
  const changed = await buildName(folder, '1.2.3');
  expect(changed).not.toBe(name);
  cpSync(join(folder, 'app/main.tsx'), join(folder, 'app/moved.tsx'));
  rmSync(join(folder, 'app/main.tsx'));
  expect(await buildName(folder, '1.2.3')).not.toBe(changed);
});

test('the newest changes are the list under the first heading of a version', () => {
  const text =
    '# Changes\n\nWords.\n\n## 0.2.0 (2027)\n\n- One\n  and more.\n- Two.\n\n## 0.1.0\n\n- Old.\n';
  expect(newestChanges(text)).toEqual({ version: '0.2.0', changes: ['One and more.', 'Two.'] });
  expect(() => newestChanges('# Changes')).toThrow(/no heading/);
});

test('what is new is told of the version that is built', () => {
  const { version } = JSON.parse(readFileSync(join(top, 'package.json'), 'utf8'));
  const newest = newestChanges(readFileSync(join(top, '.github/CHANGELOG.md'), 'utf8'));
  expect(newest.version).toBe(version);
  expect(newest.changes.length).toBeGreaterThan(0);
});

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { filesUnder } from '../../app/build/files-under.ts';
import { packageOf } from '../../app/build/licences.ts';
import { expect, test } from './support/app-page.ts';
import { readyOffline } from './support/ready-offline.ts';
import { releaseFolder } from './support/release-folder.ts';

const top = join(import.meta.dirname, '..', '..');
const built = releaseFolder('v1');

/** The packages whose code lies in a build, by its source maps: not by what the build noted itself. */
async function packagesIn(folder: string): Promise<string[]> {
  const maps = (await filesUnder(folder)).filter((file) => file.endsWith('.map'));
  const sources = maps.flatMap(
    (file) => (JSON.parse(readFileSync(file, 'utf8')) as { sources: string[] }).sources,
  );
  return [...new Set(sources.map(packageOf))].filter((name) => name !== null).sort();
}

/** Packages whose licence, as it lies in their own folder, is not among the notices. */
const withoutNotice = (packages: readonly string[], notices: string): string[] =>
  packages.filter((name) => {
    const folder = join(top, 'node_modules', name);
    const file = readdirSync(folder).find((each) => /^licen[cs]e(\.(md|txt))?$/i.test(each));
    const licence = readFileSync(join(folder, file ?? 'LICENSE'), 'utf8').trim();
    return !notices.includes(`\n${name} `) || !notices.includes(licence);
  });

test('every bundled package has its notice in what is handed on', async () => {
  const notices = readFileSync(join(built, 'licences.txt'), 'utf8');
  const packages = await packagesIn(built);
  for (const name of ['preact', '@preact/signals-core', 'comlink', 'idb', 'workbox-strategies'])
    expect(packages).toContain(name);
  expect(withoutNotice(packages, notices)).toEqual([]);
  // One that is missing would be seen.
  const comlink = readFileSync(join(top, 'node_modules/comlink/LICENSE'), 'utf8').trim();
  expect(withoutNotice(packages, notices.replace(comlink, ''))).toEqual(['comlink']);
});

test('our own licence and the sources of the tables and the example go with it', () => {
  const text = (path: string) => readFileSync(path, 'utf8').trim();
  expect(text(join(built, 'LICENSE'))).toBe(text(join(top, 'LICENSE')));
  const notices = text(join(built, 'licences.txt'));
  for (const path of ['LICENSE', 'app/core/paint/data/ATTRIBUTION.md', 'app/demo/ATTRIBUTION.md'])
    expect(notices).toContain(text(join(top, path)));
});

test('no doubts about licences are shipped in the code itself', async () => {
  const scripts = (await filesUnder(built)).filter((file) => file.endsWith('.js'));
  const doubts = /legal advice|verdict: (ship|us)able|states no licence|licence text not seen/i;
  expect(scripts.filter((file) => doubts.test(readFileSync(file, 'utf8')))).toEqual([]);
  expect('Verdict: shippable as facts (guess, not legal advice)').toMatch(doubts);
});

test.describe('with the host gone', () => {
  test.use({ serviceWorkers: 'allow' });
  test('one quiet page tells version, news, help, licences and privacy', async ({ page, host }) => {
    await page.goto('./');
    await readyOffline(page);
    await host.close();
    await page.getByRole('link', { name: 'About Firstwash' }).click();
    await expect(page.getByTestId('version')).toHaveText('v1');
    const parts = ['Version', 'What is new', 'Help', 'On your home screen', 'Licences', 'Privacy'];
    for (const part of parts) await expect(page.getByRole('region', { name: part })).toBeVisible();
    await page.getByText('Read all licences').click();
    await expect(page.getByTestId('licences')).toContainText('Apache License');
    await page.getByRole('link', { name: 'The licences as a file' }).click();
    await expect(page.locator('body')).toContainText('Apache License');
  });
});

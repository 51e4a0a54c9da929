import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test } from '@playwright/test';
import { releaseFolder } from './support/release-folder.ts';

const limitBytes = 60_000;

/** index.html and the scripts and styles it names, and what those scripts import at once. */
function firstLoad(folder: string): string[] {
  const files = new Set<string>(['index.html']);
  const page = readFileSync(join(folder, 'index.html'), 'utf8');
  for (const [, name] of page.matchAll(/(?:src|href)="\.\/([^"]+\.(?:js|css))"/g))
    if (name) files.add(name);
  for (const file of files) {
    if (!file.endsWith('.js')) continue;
    const code = readFileSync(join(folder, file), 'utf8');
    for (const [, name] of code.matchAll(/(?:from|import)\s*["'`]\.\/([\w.-]+\.js)["'`]/g))
      if (name) files.add(`assets/${name}`);
  }
  return [...files];
}

const gzipBytes = (folder: string, file: string) =>
  gzipSync(readFileSync(join(folder, file)), { level: 9 }).length;

test(`the first load is at most ${limitBytes / 1000} kB (gzip)`, () => {
  const folder = releaseFolder('v1');
  const sizes = firstLoad(folder).map((file) => ({ file, bytes: gzipBytes(folder, file) }));
  const total = sizes.reduce((sum, { bytes }) => sum + bytes, 0);
  console.log(`first load ${total} bytes:`, sizes.map((s) => `${s.file} ${s.bytes}`).join(', '));
  const later = readdirSync(join(folder, 'assets'))
    .filter((name) => name.endsWith('.js') && !sizes.some(({ file }) => file.endsWith(name)))
    .map((name) => `assets/${name}`);
  for (const file of [...later, 'service-worker.js'])
    console.log(`apart from it: ${file} ${gzipBytes(folder, file)}`);
  expect(sizes.some(({ file }) => file.endsWith('.js'))).toBe(true);
  expect(sizes.some(({ file }) => file.endsWith('.css'))).toBe(true);
  expect(total).toBeLessThanOrEqual(limitBytes);
});

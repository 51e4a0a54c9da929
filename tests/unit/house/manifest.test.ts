import { existsSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { browserTooOld } from '../../../app/core/words/reference/photo-problem.ts';
import { routeOf } from '../../../app/state/router.ts';
import { top } from './source-files.ts';

interface Icon {
  readonly src: string;
  readonly sizes: string;
  readonly purpose: string;
}

interface Screenshot extends Omit<Icon, 'purpose'> {
  readonly form_factor: string;
  readonly label: string;
}

const manifest = JSON.parse(readFileSync(join(top, 'manifest.webmanifest'), 'utf8')) as {
  icons: Icon[];
  screenshots: Screenshot[];
  shortcuts: { name: string; url: string }[];
} & Record<string, unknown>;
const page = readFileSync(join(top, 'app', 'index.html'), 'utf8');

/** Width and height from a PNG's header. Source: W3C, Portable Network Graphics, 11.2.2 IHDR. */
function pngSize(file: string): string {
  const bytes = readFileSync(file);
  return `${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}`;
}

test('the manifest makes the app installable under any sub-path', () => {
  expect(manifest).toMatchObject({
    name: 'Firstwash',
    id: './',
    start_url: './',
    scope: './',
    display: 'standalone',
    orientation: 'any',
  });
  const bySize = (size: string, purpose: string) =>
    manifest.icons.some((icon) => icon.sizes === size && icon.purpose === purpose);
  expect([
    bySize('192x192', 'any'),
    bySize('512x512', 'any'),
    bySize('512x512', 'maskable'),
  ]).toEqual([true, true, true]);
});

test('photos and copies can be opened with the app, and handed to it', () => {
  expect(manifest.file_handlers).toMatchObject([
    { action: './', accept: { 'application/zip': ['.zip'], 'image/jpeg': ['.jpg', '.jpeg'] } },
  ]);
  expect(manifest.share_target).toMatchObject({ action: './share', method: 'POST' });
  const worker = readFileSync(join(top, 'workers', 'service.worker.ts'), 'utf8');
  expect(worker).toContain("inScope('share')");
  expect(worker).toContain("getAll('files')");
});

test('every icon is there and as large as it says', () => {
  for (const { src, sizes } of manifest.icons) {
    const file = join(top, src);
    expect(existsSync(file), src).toBe(true);
    if (src.endsWith('.png')) expect(pngSize(file), src).toBe(sizes);
  }
  expect(pngSize(join(top, 'icons', 'apple-touch-icon-180.png'))).toBe('180x180');
});

test('what is shown before it is installed: small pictures of the size they say, for both shapes of screens', async () => {
  for (const { src, sizes, label } of manifest.screenshots) {
    const { width, height, format } = await sharp(join(top, src)).metadata();
    expect([`${width}x${height}`, format], src).toEqual([sizes, 'jpeg']);
    expect(label).not.toBe('');
    // Chromium takes 320 to 3840 px, the long side at most 2.3 times the short one (web.dev, Richer install UI).
    const sides = [width, height].sort((a, b) => a - b);
    expect(sides[0]).toBeGreaterThanOrEqual(320);
    expect((sides[1] ?? 0) / (sides[0] ?? 1)).toBeLessThanOrEqual(2.3);
    expect(statSync(join(top, src)).size, src).toBeLessThan(120_000);
  }
  const shapes = manifest.screenshots.map(({ form_factor }) => form_factor);
  expect(new Set(shapes)).toEqual(new Set(['narrow', 'wide']));
});

test('shortcuts lead to places the app knows, and a second start to the window that is open', () => {
  const places = manifest.shortcuts.map(({ url }) => routeOf(url.replace(/^[^#]*/, '')).screen);
  // The first is told apart in app/state/launches.ts.
  expect(manifest.shortcuts[0]?.url).toBe('./#/go-on');
  expect(places).toEqual(['start', 'camera', 'box']);
  expect(manifest.launch_handler).toEqual({ client_mode: ['navigate-existing', 'auto'] });
});

test('an icon of one colour, for systems that give it theirs', async () => {
  const marks = manifest.icons.filter(({ purpose }) => purpose === 'monochrome');
  expect(marks.map(({ sizes }) => sizes)).toEqual(['any', '512x512']);
  const file = join(top, marks[1]?.src ?? '');
  const { channels } = await sharp(file).stats();
  const [red, , , alpha] = channels;
  expect([red?.max, alpha?.min, alpha?.max]).toEqual([0, 0, 255]); // only how opaque it is tells
});

test('the colours around the app are neutral', () => {
  const colours = [
    manifest.theme_color,
    manifest.background_color,
    ...[...page.matchAll(/name="theme-color" content="([^"]+)"/g)].map(([, colour]) => colour),
  ];
  expect(colours).toHaveLength(4);
  for (const colour of colours) expect(colour).toMatch(/^#([\da-f]{2})\1\1$/);
});

test('the page names the same browsers as the app, where not even that starts', () => {
  const [versions = 'none'] = /Chrome or Edge.*$/.exec(browserTooOld) ?? [];
  expect(page.replace(/\s+/g, ' ')).toContain(versions);
});

test("the page's policy allows nothing but its own", () => {
  const [, policy = ''] = /Content-Security-Policy"\s+content="([^"]+)"/.exec(page) ?? [];
  const directives = Object.fromEntries(
    policy.split(';').map((directive) => {
      const [name = '', ...sources] = directive.trim().split(/\s+/);
      return [name, sources.join(' ')];
    }),
  );
  expect(directives).toEqual({
    'default-src': "'none'",
    'script-src': "'self'",
    'style-src': "'self'",
    'img-src': "'self' blob:",
    'media-src': "'self' blob:",
    'worker-src': "'self'",
    'connect-src': "'self'",
    'manifest-src': "'self'",
    'font-src': "'none'",
    'base-uri': "'none'",
    'form-action': "'none'",
    'object-src': "'none'",
  });
});

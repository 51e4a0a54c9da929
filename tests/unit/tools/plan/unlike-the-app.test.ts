import sharp from 'sharp';
import { expect, test } from 'vitest';
import { photoHeader } from '../../../../app/core/reference/photo-header.ts';
import { onOneLine } from '../../../../app/tools/plan/run-plan.ts';
import { unlikeTheApp } from '../../../../app/tools/plan/unlike-the-app.ts';
import { greyPng } from '../../../support/png.ts';
import { caseFile } from '../../../support/reference/case-file.ts';

const said = (bytes: Uint8Array, turn = 1) => {
  const header = photoHeader(bytes);
  if (!header) throw new Error('no header');
  return unlikeTheApp(bytes, header, turn);
};

/** A PNG with one more chunk behind its head; the sums are not looked at. */
function pngWith(name: string, data: readonly number[]): Uint8Array {
  const plain = greyPng(4, 3, 120);
  const chunk = Buffer.alloc(12 + data.length);
  chunk.writeUInt32BE(data.length, 0);
  chunk.write(name, 4, 'latin1');
  chunk.set(data, 8);
  return new Uint8Array(Buffer.concat([plain.subarray(0, 33), chunk, plain.subarray(33)]));
}

// PNG Third Edition (W3C 2025), 11.3.2.2: gAMA holds the gamma times 100,000; sRGB is told as 45455.
test('a PNG with a brightness of its own, a moving one, one of other colours', () => {
  expect(said(pngWith('gAMA', [0, 1, 0x86, 0xa0]))).toMatch(/gAMA/);
  expect(said(pngWith('gAMA', [0, 0, 0xb1, 0x8f]))).toBeNull();
  expect(said(pngWith('acTL', [0, 0, 0, 2, 0, 0, 0, 0]))).toMatch(/moving picture/);
  expect(said(pngWith('cICP', [9, 16, 0, 1]))).toMatch(/cICP/);
});

test('inks, BMP, a turned WebP', async () => {
  expect(said(caseFile('cmyk-adobe-marker.jpg'))).toMatch(/printing inks/);
  expect(said(caseFile('picture.bmp'))).toMatch(/BMP/);
  const source = sharp({ create: { width: 30, height: 20, channels: 3, background: '#846' } });
  const webp = new Uint8Array(await source.webp().toBuffer());
  expect(said(webp, 6)).toMatch(/turned/);
  expect(said(webp)).toBeNull();
});

test('an AVIF of high dynamic range, told by its codes', () => {
  const plain = caseFile('picture.avif');
  expect(said(plain)).toBeNull();
  for (const [transfer, cause] of [
    [16, /high dynamic range/],
    [18, /high dynamic range/],
  ] as const) {
    const box = Buffer.from([...Buffer.from('colrnclx'), 0, 9, 0, transfer, 0, 9, 0x80]);
    expect(said(new Uint8Array(Buffer.concat([plain.subarray(0, 32), box])))).toMatch(cause);
  }
});

test.each([
  'exif-orient-6.jpg',
  'patches-p3-tagged.jpg',
  'patches-p3-tagged.png',
  'animated.gif',
  'animated.webp',
  'png-16bit-rgb.png',
  'really-a-jpeg.png',
])('%s is read as the app reads it', (name) => expect(said(caseFile(name))).toBeNull());

test('what a file brings along stays on one line and is no command to the terminal', () => {
  expect(onOneLine('paint "a\nb\u001b[31m\u0085": K')).toBe(
    'paint "a\\u000ab\\u001b[31m\\u0085": K',
  );
});

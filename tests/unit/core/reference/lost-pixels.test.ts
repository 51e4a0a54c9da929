import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { hasLostPixels } from '../../../../app/core/reference/lost-pixels.ts';
import { photoHeader } from '../../../../app/core/reference/photo-header.ts';

const photo = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(new URL(`../../../fixtures/${name}`, import.meta.url)));

/** A picture as this encoder stores it. */
async function encoded(code: number, options: object): Promise<Uint8Array> {
  const create = {
    width: 1600,
    height: 1200,
    channels: 3,
    background: { r: code, g: code, b: code },
  };
  return new Uint8Array(
    await sharp({ create } as never)
      .jpeg(options)
      .toBuffer(),
  );
}

const names = ['dahlia.jpg', 'portrait.jpg', 'forest-stream.jpg'];

test.each(names)('%s: whole it has lost nothing, with a hole it has', (name) => {
  const whole = photo(name);
  expect(hasLostPixels(whole)).toBe(false);
  for (const from of [0.3, 0.5, 0.8]) {
    const holed = whole.slice();
    const at = Math.floor(holed.length * from);
    holed.fill(0, at, at + 512);
    expect(photoHeader(holed)?.complete).toBe(true); // so it is not refused as cut short
    expect(hasLostPixels(holed)).toBe(true);
  }
});

test('what hangs behind the picture, or is cut off, is another matter', () => {
  const whole = photo('dahlia.jpg');
  const longer = new Uint8Array(whole.length + 5000);
  longer.set(whole);
  expect(hasLostPixels(longer)).toBe(false);
  for (let length = 0; length < 1200; length++) hasLostPixels(whole.subarray(0, length)); // never throws
  expect(hasLostPixels(whole.subarray(0, 70_000))).toBe(false);
});

test.each([
  ['white', 255, {}],
  ['black', 0, {}],
  ['white, codes of its own', 255, { optimiseCoding: true }],
  ['white, bit by bit', 255, { progressive: true }],
  ['grey, fine', 128, { quality: 100, chromaSubsampling: '4:4:4' }],
])('a plain picture has lost nothing: %s', async (_, code, options) => {
  expect(hasLostPixels(await encoded(code, options))).toBe(false);
});

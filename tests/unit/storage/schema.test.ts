import { inflateRawSync } from 'node:zlib';
import { afterEach, expect, test, vi } from 'vitest';
import { packBytes, unpackBytes } from '../../../app/storage/schema.ts';

const map = new Uint8Array(100_000).map((_, i) => (i / 5000) | 0);

afterEach(() => vi.unstubAllGlobals());

test('a slot map is deflated as another program reads it, and comes back', async () => {
  const packed = await packBytes(map);
  expect(packed.packing).toBe('deflate-raw');
  expect(packed.bytes.byteLength).toBeLessThan(2000);
  expect(new Uint8Array(inflateRawSync(packed.bytes))).toEqual(map);
  expect(await unpackBytes(packed)).toEqual(map);
});

test('a view into a larger buffer packs only itself', async () => {
  const view = new Uint8Array(map.buffer, 5000, 10);
  expect(await unpackBytes(await packBytes(view))).toEqual(view);
});

test('without the browser’s help it is kept plain', async () => {
  vi.stubGlobal('CompressionStream', undefined);
  const packed = await packBytes(map);
  expect(packed).toMatchObject({ packing: 'plain', bytes: { byteLength: map.length } });
  expect(await unpackBytes(packed)).toEqual(map);
});

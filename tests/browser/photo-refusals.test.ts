import { afterEach, expect, test, vi } from 'vitest';
import { decodePhoto, largestAreaPx } from '../../workers/photo/decode-photo.ts';
import { casePhoto } from './support/case-photo.ts';

const decoding = vi.spyOn(globalThis, 'createImageBitmap');

afterEach(() => decoding.mockClear());

// A-FMT-3, 4, 5, 6, 8 and A-BIG-9, 10: told from the bytes, nothing is decoded
test.each([
  ['zero-bytes.jpg', /The file is empty/],
  ['text-named.jpg', /not a picture/],
  ['truncated-60-percent.jpg', /incomplete/],
  ['truncated-50-percent.png', /incomplete/],
  ['script.svg', /SVG/],
  ['bomb-16000x16000-1bit.png', /256 megapixels, and 150 is the limit/],
  ['bomb-30000x30000-1bit.png', /900 megapixels, and 150 is the limit/],
])('%s is refused in words before it is decoded', async (name, cause) => {
  const photo = await casePhoto(name, 'image/jpeg');
  await expect(decodePhoto(photo, largestAreaPx)).rejects.toMatchObject({
    name: 'PhotoError',
    message: expect.stringMatching(cause),
  });
  expect(decoding).not.toHaveBeenCalled();
});

// A-FMT-1
test('a HEIC photo is named, with the way to a JPEG', async () => {
  await expect(decodePhoto(await casePhoto('picture.heic'), largestAreaPx)).rejects.toMatchObject({
    name: 'PhotoError',
    message: expect.stringMatching(/HEIC.*JPEG/),
  });
  expect(decoding).toHaveBeenCalled();
});

test('a JPEG with a header and an end but nothing between is damaged', async () => {
  const whole = new Uint8Array(await (await casePhoto('exif-orient-1.jpg')).arrayBuffer());
  const hollow = new Blob([whole.subarray(0, 400), new Uint8Array([0xff, 0xd9])]);
  await expect(decodePhoto(hollow, largestAreaPx)).rejects.toMatchObject({ name: 'PhotoError' });
});

// A-FMT-11
test('after bad files the next good one opens', async () => {
  for (const name of ['zero-bytes.jpg', 'text-named.jpg']) {
    await expect(decodePhoto(await casePhoto(name), largestAreaPx)).rejects.toThrow();
  }
  const { bitmap, size } = await decodePhoto(await casePhoto('exif-orient-1.jpg'), largestAreaPx);
  expect(size).toEqual({ width: 480, height: 320 });
  bitmap.close();
});

test('a large photo keeps its true size beside the reduced bitmap', async () => {
  const photo = await casePhoto('huge-108mp-12000x9000.jpg');
  const { bitmap, size } = await decodePhoto(photo, largestAreaPx);
  expect(size).toEqual({ width: 12000, height: 9000 });
  expect([bitmap.width, bitmap.height]).toEqual([4729, 3547]);
  bitmap.close();
});

test.each([
  [
    'createImageBitmap takes no options',
    () => decoding.mockRejectedValue(new TypeError('options')),
  ],
  ['there is no OffscreenCanvas', () => vi.stubGlobal('OffscreenCanvas', undefined)],
])('where %s, the browser is named and not the photo', async (_, lack) => {
  lack();
  try {
    await expect(
      decodePhoto(await casePhoto('exif-orient-1.jpg'), largestAreaPx),
    ).rejects.toMatchObject({ name: 'BrowserError', message: expect.stringMatching(/too old/) });
  } finally {
    decoding.mockReset();
    vi.unstubAllGlobals();
  }
});

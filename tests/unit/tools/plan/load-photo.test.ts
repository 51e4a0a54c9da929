import { expect, test } from 'vitest';
import { loadPhoto } from '../../../../app/tools/plan/load-photo.ts';
import { casePath } from '../../../support/plan/run-command.ts';

const at = ({ rgba, width }: Awaited<ReturnType<typeof loadPhoto>>, x: number, y: number) =>
  rgba[(y * width + x) * 4] as number;

test.each([
  ...[1, 2, 3, 4, 5, 6, 7, 8].map((turn) => `exif-orient-${turn}.jpg`),
  'exif-wrong-size.jpg',
  'exif-broken-offset.jpg',
])('%s stands upright', async (name) => {
  const photo = await loadPhoto(casePath(name));
  expect([photo.width, photo.height, photo.rgba.length]).toEqual([480, 320, 480 * 320 * 4]);
  const seen = [at(photo, 140, 100), at(photo, 360, 80), at(photo, 120, 240), at(photo, 360, 240)];
  seen.forEach((code, i) => {
    expect(Math.abs(code - ([245, 170, 95, 20][i] as number))).toBeLessThanOrEqual(2);
  });
});

test('16 bits, profiles and transparency come out as 8-bit sRGB on white', async () => {
  const deep = await loadPhoto(casePath('png-16bit-grey.png'));
  expect(at(deep, deep.width - 5, deep.height - 5)).toBe(20);
  const wide = await loadPhoto(casePath('patches-p3-tagged.png'));
  const plain = await loadPhoto(casePath('patches-srgb-untagged.png'));
  wide.rgba.forEach((code, i) => {
    if (Math.abs(code - (plain.rgba[i] as number)) > 2) throw new Error(`byte ${i} is off`);
  });
  const clear = await loadPhoto(casePath('png-fully-transparent.png'));
  expect(clear.rgba.every((code) => code === 255)).toBe(true);
});

test('a photo over 16,777,216 px comes reduced, its shape kept', async () => {
  const photo = await loadPhoto(casePath('just-over-ios-area-4100x4100.jpg'));
  expect([photo.width, photo.height]).toEqual([4096, 4096]);
});

test.each([
  ['no-such.jpg', /there is no such file/],
  ['zero-bytes.jpg', /The file is empty/],
  ['truncated-60-percent.jpg', /incomplete/],
  ['truncated-50-percent.png', /incomplete/],
  ['picture.heic', /HEIC/],
  ['bomb-16000x16000-1bit.png', /256 megapixels/],
  ['script.svg', /SVG/],
  ['', /can't be read/],
])('%s is refused with its cause', async (name, cause) => {
  await expect(loadPhoto(casePath(name))).rejects.toThrow(cause);
});

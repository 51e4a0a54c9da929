import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { colourDifference } from '../../../../app/core/colour/ciede2000.ts';
import type { Lab } from '../../../../app/core/colour/lab.ts';
import { cropToRaster, loadPhoto } from '../../../../app/tools/plan/load-photo.ts';
import { casePath } from '../../../support/plan/run-command.ts';
import { patchColours, widePatches } from '../../../support/reading/wide-patches.ts';

const at = ({ rgba, width }: Awaited<ReturnType<typeof loadPhoto>>, x: number, y: number) =>
  rgba[(y * width + x) * 4] as number;

// Turns 1 to 8: CIPA DC-008 (Exif 2.32), 2019, tag Orientation.
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

test('16 bits and transparency come out as 8 bits on white', async () => {
  const deep = await loadPhoto(casePath('png-16bit-grey.png'));
  expect(at(deep, deep.width - 5, deep.height - 5)).toBe(20);
  const clear = await loadPhoto(casePath('png-fully-transparent.png'));
  expect(clear.rgba.every((code) => code === 255)).toBe(true);
});

test.each(widePatches)('%s keeps its colours beyond sRGB', async (name, truth) => {
  const photo = await loadPhoto(casePath(name));
  expect(photo.space).toBe('display-p3');
  const { raster } = cropToRaster(photo, { format: 'own', widthMm: 200, heightMm: 100 });
  patchColours(raster).forEach((colour, i) => {
    expect(colourDifference(colour, truth[i] as Lab), `patch ${i + 1}`).toBeLessThan(0.6);
  });
});

test('a damaged profile is passed over', async () => {
  const bytes = await readFile(casePath('patches-p3-tagged.jpg'));
  bytes.write('none', bytes.indexOf('para'), 'latin1'); // its curves are of no known kind now
  const folder = await mkdtemp(join(tmpdir(), 'photo-'));
  try {
    await writeFile(join(folder, 'damaged.jpg'), bytes);
    const photo = await loadPhoto(join(folder, 'damaged.jpg'));
    expect(photo.space).toBe('srgb');
    expect(Math.abs(at(photo, 420, 60) - 186)).toBeLessThanOrEqual(1); // the code as it stands there
  } finally {
    await rm(folder, { recursive: true });
  }
});

test('a photo in sRGB is read as such', async () => {
  expect((await loadPhoto(casePath('patches-srgb-untagged.png'))).space).toBe('srgb');
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
  ['cmyk-adobe-marker.jpg', /printing inks/],
  ['picture.bmp', /can't read BMP/],
  ['bomb-16000x16000-1bit.png', /256 megapixels/],
  ['script.svg', /SVG/],
  ['', /can't be read/],
])('%s is refused with its cause', async (name, cause) => {
  await expect(loadPhoto(casePath(name))).rejects.toThrow(cause);
});

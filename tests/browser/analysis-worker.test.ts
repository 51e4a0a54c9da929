import { afterAll, expect, test } from 'vitest';
import { createAnalysisClient } from '../../app/client/analysis-client.ts';
import type { ProgressPhase } from '../../app/core/reading/reading.ts';
import { warningInWords } from '../../app/core/words/reading/warnings.ts';
import type { Pictures, ReadResult } from '../../workers/api.ts';
import { fewPaints } from '../support/few-paints.ts';
import { casePhoto } from './support/case-photo.ts';
import { closePictures, readRequest, twelveMegapixels } from './support/read-request.ts';

const client = createAnalysisClient();
afterAll(() => client.dispose());
const signal = new AbortController().signal;

async function read(name: string, wishes = {}, longSidePx = 1600): Promise<ReadResult> {
  const photo = await casePhoto(name);
  const { width, height, preview } = await client.openPhoto(signal, photo);
  preview.close();
  const request = readRequest(photo, width, height, wishes, longSidePx);
  return client.read(signal, request, closePictures, () => {});
}

const snow = new URL('../fixtures/mountain-snow.jpg', import.meta.url);
const snowPhoto = async (): Promise<Blob> => (await fetch(snow)).blob();

test('a photo opens with its size and a preview that is not larger than it need be', async () => {
  const facts = await client.openPhoto(signal, await casePhoto('huge-108mp-12000x9000.jpg'));
  expect([facts.width, facts.height]).toEqual([12000, 9000]);
  expect([facts.preview.width, facts.preview.height]).toEqual([1600, 1200]);
  facts.preview.close();
});

test('a reading, its maps and pictures fit together', async () => {
  const parts: number[] = [];
  const stages = new Set<ProgressPhase>();
  const photo = await snowPhoto();
  const { width, height, preview } = await client.openPhoto(signal, photo);
  preview.close();
  const early: Pictures[] = [];
  const result = await client.read(
    signal,
    readRequest(photo, width, height),
    (pictures) => early.push(pictures),
    (part, stage) => {
      parts.push(part);
      stages.add(stage);
    },
  );
  const { reading, slotMap, bandMap, lightnessMap } = result;
  const { raster } = reading;
  expect(Math.max(raster.width, raster.height)).toBeLessThanOrEqual(1600);
  for (const map of [slotMap, bandMap, lightnessMap])
    expect(map.length).toBe(raster.width * raster.height);
  expect(early).toHaveLength(1);
  for (const bitmap of early.flatMap(({ reference, grey }) => [reference, grey])) {
    expect([bitmap.width, bitmap.height]).toEqual([raster.width, raster.height]);
  }
  expect(slotMap.every((slot) => slot < reading.slots.length)).toBe(true);
  expect(reading.bands.reduce((sum, band) => sum + band.share, 0)).toBeCloseTo(1, 6);
  expect(parts).toEqual([...parts].sort((a, b) => a - b));
  expect(parts.at(-1)).toBe(1);
  const order: ProgressPhase[] = ['opening', 'looking', 'values', 'colours', 'shapes'];
  expect([...stages]).toEqual(order.filter((stage) => stages.has(stage)));
  expect(stages.size).toBeGreaterThanOrEqual(4);
  const thumbnail = await createImageBitmap(new Blob([result.thumbnail]));
  expect(Math.max(thumbnail.width, thumbnail.height)).toBe(480);

  const kept = await client.pictures(signal, result.referenceJpeg);
  expect([kept.reference.width, kept.grey.height]).toEqual([raster.width, raster.height]);
  const again = await client.pictures(signal, result.referenceJpeg); // A-WRK-4: not used up
  expect(again.grey.width).toBe(raster.width);

  const plan = await client.plan(signal, reading, { box: fewPaints }, () => {});
  expect(plan.palette.length).toBeGreaterThan(0);
  for (const step of plan.steps) expect(step.after).toHaveLength(plan.slots.length);
  early.forEach(closePictures);
});

const upright = read('exif-orient-1.jpg', { bands: 4 });

// A-ORI-1, A-COL-11: the same picture, however it is turned or stored
test.each([
  'exif-orient-6.jpg',
  'exif-orient-8.jpg',
  'really-a-jpeg.png',
  'exif-false-thumbnail.jpg',
])('%s is read as the upright one is', async (name) => {
  const plain = await upright;
  const other = await read(name, { bands: 4 });
  expect(other.reading.bands).toHaveLength(plain.reading.bands.length);
  other.reading.bands.forEach((band, i) => {
    const expected = plain.reading.bands[i];
    expect(Math.abs(band.lightness - (expected?.lightness ?? 0))).toBeLessThan(1);
    expect(Math.abs(band.share - (expected?.share ?? 0))).toBeLessThan(0.01);
  });
});

// A-COL-2
test('a wide-gamut photo is read to the same families as its plain twin', async () => {
  const plain = await read('patches-srgb-untagged.png');
  const wide = await read('patches-p3-tagged.png');
  expect(wide.reading.families).toHaveLength(plain.reading.families.length);
  wide.reading.families.forEach((family, i) => {
    expect(Math.abs(family.share - (plain.reading.families[i]?.share ?? 0))).toBeLessThan(0.02);
  });
});

// A-COL-9
test('a fine check reads L* 76 at two working sizes', async () => {
  for (const longSidePx of [1600, 800]) {
    const result = await read('checker-1px-1024.png', {}, longSidePx);
    expect(Math.abs(result.reading.lightness.p50 - 76)).toBeLessThan(1.5);
  }
});

// A-BIG-5, 6, 7 and A-COL-3, 7, 8, 10: odd pictures give a reading of finite numbers
test.each([
  'panorama-20000x500.jpg',
  'line-5000x1.png',
  'one-pixel.png',
  'p3-out-of-gamut.png',
  'png-alpha-hidden-black.png',
  'png-fully-transparent.png',
  'ramp-0-255.png',
])('%s gives a sound reading and a plan', async (name) => {
  const result = await read(name);
  const { reading } = result;
  const text = JSON.stringify(reading, (_, value) =>
    typeof value === 'number' && !Number.isFinite(value) ? 'not finite' : value,
  );
  expect(text).not.toContain('not finite');
  expect(reading.bands.length).toBeGreaterThan(0);
  expect(reading.bands.reduce((sum, band) => sum + band.share, 0)).toBeCloseTo(1, 6);
  const plan = await client.plan(signal, reading, { box: fewPaints }, () => {});
  // All white: a plan without steps, that says why.
  const nothing = plan.warnings.some(({ code }) => code === 'nothing-to-paint');
  expect(plan.steps.length > 0).toBe(!nothing);
});

// A-BIG-7
test('a panorama of which hardly anything is on the sheet says so, the whole of it does not', async () => {
  const photo = await casePhoto('panorama-20000x500.jpg');
  const small = readRequest(photo, 20_000, 500); // 683 px of 20,000 lie on a quarter sheet
  const said = async (request: typeof small): Promise<string> => {
    const { reading } = await client.read(signal, request, closePictures, () => {});
    return reading.warnings.map(warningInWords).join(' ');
  };
  expect(await said(small)).toMatch(/Of this photo only 3 % is on your sheet/);
  const crop = { centre: [0.5, 0.5], size: [1, 1], turn: 0 } as const;
  const sheet = { format: 'own', widthMm: 800, heightMm: 20 } as const;
  expect(await said({ ...small, crop, sheet })).not.toMatch(/on your sheet/);
});

// A-FMT-11
test('after bad files the next good one is read', async () => {
  for (const name of ['zero-bytes.jpg', 'text-named.jpg', 'picture.heic']) {
    await expect(read(name)).rejects.toMatchObject({ name: 'PhotoError' });
  }
  expect((await read('exif-orient-1.jpg')).reading.bands.length).toBeGreaterThan(0);
});

test('wishes that contradict each other come back as a sentence', async () => {
  const result = await read('exif-orient-1.jpg');
  await expect(
    client.plan(signal, result.reading, { paletteSize: 99 }, () => {}),
  ).rejects.toMatchObject({ name: 'WishError' });
});

test('the 108-megapixel photo given up for another does not hold it up', async () => {
  const huge = await casePhoto('huge-108mp-12000x9000.jpg');
  const abort = new AbortController();
  const given = client.read(
    abort.signal,
    readRequest(huge, 12000, 9000),
    closePictures,
    () => abort.abort(), // at its first sign of progress
  );
  await expect(given).rejects.toMatchObject({ name: 'AbortError' });
  expect((await read('exif-orient-1.jpg')).reading.bands.length).toBeGreaterThan(0);
});

// A-BIG-1
test('a 12-megapixel photo is read while the page goes on', async () => {
  const photo = await twelveMegapixels(snow);
  let beats = 0;
  let longest = 0;
  let last = performance.now();
  const beat = setInterval(() => {
    beats += 1;
    longest = Math.max(longest, performance.now() - last);
    last = performance.now();
  }, 10);
  const start = performance.now();
  // The size that matters here is the photo's, not the raster's; a walk reads one as large as the app does.
  const request = readRequest(photo, 4000, 3000, {}, 800);
  await client.read(signal, request, closePictures, () => {});
  const took = performance.now() - start;
  clearInterval(beat);
  console.info(`12 megapixels: read ${Math.round(took)} ms, page held ${Math.round(longest)} ms`);
  // Times are told, not tested: machines differ. A page that is held while it is read gets no turn at all.
  expect(beats).toBeGreaterThan(10);
});

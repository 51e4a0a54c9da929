import { afterAll, expect, test } from 'vitest';
import { createAnalysisClient } from '../../app/client/analysis-client.ts';
import type { Point } from '../../app/core/colour/lab.ts';
import type { ReadingWishes } from '../../app/core/reading/reading.ts';
import type { Alteration } from '../../app/core/reference/photo-stroke.ts';
import type { Pictures, ReadResult } from '../../workers/api.ts';
import { closePictures, readRequest } from './support/read-request.ts';

const client = createAnalysisClient();
afterAll(() => client.dispose());
const signal = new AbortController().signal;

const [width, height] = [640, 480];

/** A dark post before a pale wall: the wall is about L* 79. */
async function postPhoto(): Promise<Blob> {
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d');
  if (!context) throw new Error('no canvas');
  context.fillStyle = 'rgb(200 195 185)';
  context.fillRect(0, 0, width, height);
  context.fillStyle = 'rgb(40 35 30)';
  context.fillRect(280, 140, 80, 220);
  return canvas.convertToBlob({ type: 'image/png' });
}

interface Read extends ReadResult {
  /** Code of the green channel of the handed-over picture and of its grey, at a place 0..1. */
  readonly codeAt: (place: Point) => readonly [colour: number, grey: number];
}

function codesOf({ reference, grey }: Pictures): Read['codeAt'] {
  const images = [reference, grey].map((bitmap) => {
    const context = new OffscreenCanvas(bitmap.width, bitmap.height).getContext('2d');
    context?.drawImage(bitmap, 0, 0);
    return context?.getImageData(0, 0, bitmap.width, bitmap.height);
  });
  closePictures({ reference, grey });
  return ([x, y]) => {
    const [colour = -1, inGrey = -1] = images.map((image) => {
      if (!image) return -1;
      const pixel = Math.floor(y * image.height) * image.width + Math.floor(x * image.width);
      return image.data[4 * pixel + 1] ?? -1;
    });
    return [colour, inGrey];
  };
}

async function read(photo: Blob, wishes: ReadingWishes = {}): Promise<Read> {
  let codeAt: Read['codeAt'] | null = null;
  const request = readRequest(photo, width, height, wishes);
  const take = (pictures: Pictures): void => {
    codeAt = codesOf(pictures);
  };
  const result = await client.read(signal, request, take, () => {});
  if (!codeAt) throw new Error('no pictures');
  return { ...result, codeAt };
}

const roundPost: Point[] = [
  [0.41, 0.25],
  [0.59, 0.25],
  [0.59, 0.8],
  [0.41, 0.8],
];
const change = (what: Alteration['change']): Alteration => ({
  change: what,
  path: roundPost,
  brush: 0,
});

const meanOf = (map: Uint8Array): number =>
  map.reduce((sum, code) => sum + code, 0) / map.length / 2.55;

test('what is left out is gone from reading, pictures and kept picture; the photo is not touched', async () => {
  const photo = await postPhoto();
  const bytes = new Uint8Array(await photo.arrayBuffer());
  const before = await read(photo);
  const after = await read(photo, { alterations: [change('leave-out')] });
  expect(before.codeAt([0.5, 0.5])[0]).toBeLessThan(45);
  const [colour, grey] = after.codeAt([0.5, 0.5]);
  expect(Math.abs(colour - 195)).toBeLessThan(3);
  expect(Math.abs(grey - 195)).toBeLessThan(3);
  expect(before.reading.lightness.p5).toBeLessThan(25);
  expect(after.reading.lightness.p5).toBeGreaterThan(75);
  expect(after.reading.edges).toEqual([]);
  const kept = codesOf(await client.pictures(signal, after.referenceJpeg));
  expect(Math.abs(kept([0.5, 0.5])[0] - 195)).toBeLessThan(4);
  expect(new Uint8Array(await photo.arrayBuffer())).toEqual(bytes);
  const again = await read(photo, { alterations: [] });
  expect(again.reading).toEqual(before.reading);
  expect(again.referenceJpeg).toEqual(before.referenceJpeg);
});

test('one value lighter moves the reading by as much as its area', async () => {
  const photo = await postPhoto();
  const before = await read(photo);
  const after = await read(photo, { alterations: [change('lighter')] });
  const gained = meanOf(after.lightnessMap) - meanOf(before.lightnessMap);
  const cut = after.reading.raster; // cut to the sheet's shape: shares are the raster's own
  expect(cut.width).toBe(before.reading.raster.width);
  expect(Math.abs(gained - 10 * 0.18 * 0.55)).toBeLessThan(0.15);
});

test('a plain ground reaches the reading, not the pictures, and the subject is found as before', async () => {
  const canvas = await createImageBitmap(await postPhoto());
  const ground = new OffscreenCanvas(width, height);
  const context = ground.getContext('2d');
  context?.drawImage(canvas, 0, 0);
  for (let x = 0; context && x < 280; x += 40) {
    context.fillStyle = 'rgb(120 130 120)';
    context.fillRect(x, 0, 20, height);
  }
  const photo = await ground.convertToBlob({ type: 'image/png' });
  const subject = [{ mode: 'circle', path: roundPost, brush: 0 }] as const;
  const before = await read(photo, { subject });
  const after = await read(photo, { subject, plainGround: true });
  expect(after.codeAt([0.3, 0.3])).toEqual(before.codeAt([0.3, 0.3]));
  expect(after.reading.subject?.share).toBe(before.reading.subject?.share);
  const groundSlots = ({ reading }: ReadResult): number =>
    reading.slots.filter(({ passage, share }) => passage === 'ground' && share > 0.01).length;
  expect(groundSlots(before)).toBeGreaterThan(1);
  expect(groundSlots(after)).toBe(1);
});

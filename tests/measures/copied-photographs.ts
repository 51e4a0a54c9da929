import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp, { type Sharp } from 'sharp';
import { type Photograph, readPhotograph, sixPhotographs } from './six-plans.ts';

type Copy = (photo: Sharp, width: number, height: number) => Sharp;

const resized =
  (side: number): Copy =>
  (photo) =>
    photo.resize({ width: side, height: side, fit: 'inside' }).jpeg({ quality: 92 });

/** So much of its sides a cropped copy lacks at every edge. */
export const cropShare = 0.02;
export const cropped = 'cropped by 2 %';

/** What becomes of a photo on its way from one device to another. */
const copies: Readonly<Record<string, Copy>> = {
  'JPEG quality 60': (photo) => photo.jpeg({ quality: 60 }),
  'brighter by 6 %': (photo) => photo.linear(1.06, 0).jpeg({ quality: 92 }),
  [cropped]: (photo, width, height) => {
    const [left, top] = [Math.round(cropShare * width), Math.round(cropShare * height)];
    const inside = { left, top, width: width - 2 * left, height: height - 2 * top };
    return photo.extract(inside).jpeg({ quality: 92 });
  },
  '800 px': resized(800),
  '1600 px': resized(1600),
  '3200 px': resized(3200),
};

/** Six photographs, each with its copies one after the other. */
export async function* copiedPhotographs(): AsyncGenerator<{
  readonly photograph: Photograph;
  readonly copied: AsyncIterable<readonly [what: string, copy: Photograph]>;
}> {
  const folder = await mkdtemp(join(tmpdir(), 'copies-'));
  const file = join(folder, 'copy.jpg');
  try {
    for (const path of sixPhotographs) {
      const { width, height } = await sharp(path).metadata();
      const copied = async function* (): AsyncGenerator<readonly [string, Photograph]> {
        for (const [what, copy] of Object.entries(copies)) {
          await copy(sharp(path), width, height).toFile(file);
          yield [what, await readPhotograph(file)];
        }
      };
      yield { photograph: await readPhotograph(path), copied: copied() };
    }
  } finally {
    await rm(folder, { recursive: true });
  }
}

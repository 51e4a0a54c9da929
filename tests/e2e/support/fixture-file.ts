import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';

const top = join(import.meta.dirname, '..', '..', '..');
const fixtures = join(top, 'tests', 'fixtures');

/** Path of a real photograph among the fixtures. */
export const photograph = (name: 'mountain-snow.jpg' | 'forest-stream.jpg'): string =>
  join(fixtures, name);

/** Path of a file of the fault cases. */
export const caseFile = (name: string): string => join(fixtures, 'cases', name);

/** Four greys, 480 x 320 px: read and planned in a blink, for tests that are not about the picture. */
export const smallPhoto = caseFile('exif-orient-1.jpg');

let made: Promise<Buffer> | undefined;

/**
 * The example's photo at 640 px instead of 2400, as a chooser hands it over: all its colours, whites and edges, read
 * in a sixth of the time, for walks that are not about size.
 */
export async function smallExample() {
  made ??= sharp(join(top, 'app', 'demo', 'seed-heads.jpg'))
    .resize(640)
    .jpeg({ quality: 92 })
    .toBuffer();
  return { name: 'Seed heads.jpg', mimeType: 'image/jpeg', buffer: await made };
}

/** A file as a chooser hands it over, under a name no repository could hold. */
export const fileNamed = (name: string, path: string, mimeType = 'image/jpeg') => ({
  name,
  mimeType,
  buffer: readFileSync(path),
});

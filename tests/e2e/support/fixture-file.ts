import { readFileSync } from 'node:fs';
import { join } from 'node:path';

const fixtures = join(import.meta.dirname, '..', '..', 'fixtures');

/** Path of a real photograph among the fixtures. */
export const photograph = (name: 'mountain-snow.jpg' | 'forest-stream.jpg'): string =>
  join(fixtures, name);

/** Path of a file of the fault cases. */
export const caseFile = (name: string): string => join(fixtures, 'cases', name);

/** Four greys, 480 x 320 px: read and planned in a blink, for tests that are not about the picture. */
export const smallPhoto = caseFile('exif-orient-1.jpg');

/** A file as a chooser hands it over, under a name no repository could hold. */
export const fileNamed = (name: string, path: string, mimeType = 'image/jpeg') => ({
  name,
  mimeType,
  buffer: readFileSync(path),
});

import type { PhotoHeader } from '../../reference/photo-header.ts';
import { largestMegapixels, type PhotoProblem } from '../../reference/photo-problem.ts';

const howToGetJpeg =
  'On the phone choose JPEG ("most compatible") in the camera\'s settings, or export the photo as JPEG, and choose it again.';

const problems = {
  drawing:
    'This is a drawing file (SVG), not a photo. Export it as JPEG or PNG and choose it again.',
  raw: "This is a TIFF or a camera raw file, which a browser can't open. Export it as JPEG and choose it again.",
  'jpeg-xl': `This is a JPEG XL photo, which this app can't open. ${howToGetJpeg}`,
  'no-picture': 'This file is not a picture. Choose a photo: JPEG, PNG, WebP, GIF, AVIF or BMP.',
  empty: 'The file is empty. Copy the photo again from where it came, or choose another.',
  incomplete:
    'The file is incomplete: part of the picture is missing. Copy or download it again and choose it anew.',
} as const;

/** Why a file can't be used as a photo: a painter's sentence with what to do next. */
export const photoProblemInWords = (told: PhotoProblem): string =>
  told.problem === 'too-large'
    ? `This picture is too large: ${Math.round(told.megapixels)} megapixels, and ${largestMegapixels} is the limit. Make a smaller copy and choose that.`
    : problems[told.problem];

/**
 * Where the browser lacks what reading any photo takes, so that no photo is to blame. Versions with all the app uses,
 * sorted copies of lists (Array.prototype.toSorted), modules and 2d canvases in workers and ':has' above all: from
 * memory. Where not even the app starts, index.html names the same.
 */
export const browserTooOld =
  'This browser is too old to read a photo; the photo is all right. Update it, or use another: Chrome or Edge from 111, Firefox from 121, Safari from 16.4.';

/** The sentence once a browser, or what else is named, has tried to open the photo and could not. */
export function undecodable(header: PhotoHeader | null, reader = 'this browser'): string {
  if (header?.kind === 'heic') {
    return `This is a HEIC photo, which ${reader} can't open. ${howToGetJpeg}`;
  }
  if (header?.kind === 'avif') {
    return `This AVIF photo can't be opened: it is damaged, or ${reader} can't read AVIF. Export it as JPEG and choose it again.`;
  }
  return "This picture can't be opened: the file is damaged. Copy it again from where it came, or choose another.";
}

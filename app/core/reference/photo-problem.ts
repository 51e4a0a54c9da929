import { type PhotoHeader, photoHeader, spells } from './photo-header.ts';

/** Largest photo taken in, megapixels (own: a phone's largest photo is 108, memory is finite). */
const largestMegapixels = 150;

const howToGetJpeg =
  'On the phone choose JPEG ("most compatible") in the camera\'s settings, or export the photo as JPEG, and choose it again.';

/** The first sign that is neither a byte order mark nor white space. */
function firstSign(bytes: Uint8Array): number {
  let offset = spells(bytes, 0, '\xef\xbb\xbf') ? 3 : 0;
  while (offset < bytes.length && (bytes[offset] ?? 0) <= 32) offset++;
  return offset;
}

function isSvg(bytes: Uint8Array): boolean {
  const start = firstSign(bytes);
  if (bytes[start] !== 60) return false; // <
  const end = Math.min(bytes.length, start + 2000);
  for (let offset = start; offset < end; offset++) if (spells(bytes, offset, '<svg')) return true;
  return false;
}

function unknownProblem(bytes: Uint8Array): string {
  if (isSvg(bytes)) {
    return 'This is a drawing file (SVG), not a photo. Export it as JPEG or PNG and choose it again.';
  }
  if (spells(bytes, 0, 'II*\0') || spells(bytes, 0, 'MM\0*')) {
    return "This is a TIFF or a camera raw file, which a browser can't open. Export it as JPEG and choose it again.";
  }
  // JPEG XL (ISO/IEC 18181-2): the bare codestream, and the container.
  if (spells(bytes, 0, '\xff\x0a') || spells(bytes, 4, 'JXL \r\n\x87\n')) {
    return `This is a JPEG XL photo, which this app can't open. ${howToGetJpeg}`;
  }
  return 'This file is not a picture. Choose a photo: JPEG, PNG, WebP, GIF, AVIF or BMP.';
}

function tooLarge(header: PhotoHeader): string | null {
  const megapixels = (header.width * header.height) / 1e6;
  if (megapixels <= largestMegapixels) return null;
  return `This picture is too large: ${Math.round(megapixels)} megapixels, and ${largestMegapixels} is the limit. Make a smaller copy and choose that.`;
}

/**
 * Why a file can't be used as a photo, told from its bytes before anything is decoded: a painter's
 * sentence with what to do next, or null where nothing speaks against it.
 */
export function photoProblem(bytes: Uint8Array): string | null {
  if (bytes.length === 0) {
    return 'The file is empty. Copy the photo again from where it came, or choose another.';
  }
  const header = photoHeader(bytes);
  if (!header) return unknownProblem(bytes);
  const large = tooLarge(header);
  if (large) return large;
  if (!header.complete) {
    return 'The file is incomplete: part of the picture is missing. Copy or download it again and choose it anew.';
  }
  return null;
}

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

import { type PhotoHeader, photoHeader, spells } from './photo-header.ts';

/** Largest photo taken in, megapixels (own: a phone's largest photo is 108, memory is finite). */
export const largestMegapixels = 150;

/** Why a file can't be used as a photo. */
export type PhotoProblem =
  | {
      readonly problem: 'drawing' | 'raw' | 'jpeg-xl' | 'no-picture' | 'empty' | 'incomplete';
    }
  | { readonly problem: 'too-large'; readonly megapixels: number };

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

function unknownProblem(bytes: Uint8Array): PhotoProblem {
  if (isSvg(bytes)) {
    return { problem: 'drawing' };
  }
  if (spells(bytes, 0, 'II*\0') || spells(bytes, 0, 'MM\0*')) {
    return { problem: 'raw' };
  }
  // JPEG XL (ISO/IEC 18181-2): the bare codestream, and the container.
  if (spells(bytes, 0, '\xff\x0a') || spells(bytes, 4, 'JXL \r\n\x87\n')) {
    return { problem: 'jpeg-xl' };
  }
  return { problem: 'no-picture' };
}

function tooLarge(header: PhotoHeader): PhotoProblem | null {
  const megapixels = (header.width * header.height) / 1e6;
  return megapixels > largestMegapixels ? { problem: 'too-large', megapixels } : null;
}

/**
 * Why a file can't be used as a photo, told from its bytes before anything is decoded; null where
 * nothing speaks against it.
 */
export function photoProblem(bytes: Uint8Array): PhotoProblem | null {
  if (bytes.length === 0) {
    return { problem: 'empty' };
  }
  const header = photoHeader(bytes);
  if (!header) return unknownProblem(bytes);
  const large = tooLarge(header);
  if (large) return large;
  if (!header.complete) {
    return { problem: 'incomplete' };
  }
  return null;
}

import type { PixelSize } from '../raster/size.ts';
import { jpegHeader } from './jpeg-header.ts';
import {
  bigFour,
  byteAt,
  littleFour,
  littlePair,
  type PhotoHeader,
  spells,
} from './photo-bytes.ts';

/** Size and completeness of a PNG (ISO/IEC 15948): whole only if its end chunk is there. */
function pngHeader(bytes: Uint8Array): PhotoHeader | null {
  if (bytes[0] !== 0x89 || !spells(bytes, 1, 'PNG\r\n')) return null;
  let complete = false;
  for (let at = 8; at + 12 <= bytes.length; at += 12 + bigFour(bytes, at)) {
    if (spells(bytes, at + 4, 'IEND')) complete = true;
  }
  const width = bigFour(bytes, 16);
  const height = bigFour(bytes, 20);
  return { kind: 'png', width, height, orientation: 1, complete };
}

const littleThree = (bytes: Uint8Array, at: number): number =>
  littlePair(bytes, at) + byteAt(bytes, at + 2) * 65536;

/** Size as the first chunk tells it: lossy, lossless or extended (RFC 9649). */
function sizeOf(bytes: Uint8Array): [number, number] {
  if (spells(bytes, 12, 'VP8X')) return [littleThree(bytes, 24) + 1, littleThree(bytes, 27) + 1];
  if (spells(bytes, 12, 'VP8L')) {
    const both = littleFour(bytes, 21);
    return [(both % 16384) + 1, (Math.floor(both / 16384) % 16384) + 1];
  }
  if (spells(bytes, 12, 'VP8 ')) {
    return [littlePair(bytes, 26) % 16384, littlePair(bytes, 28) % 16384];
  }
  return [0, 0];
}

/** Size and completeness of a WebP picture (RFC 9649). */
function webpHeader(bytes: Uint8Array): PhotoHeader | null {
  if (!spells(bytes, 0, 'RIFF') || !spells(bytes, 8, 'WEBP')) return null;
  const [width, height] = sizeOf(bytes);
  const complete = bytes.length >= littleFour(bytes, 4) + 8;
  return { kind: 'webp', width, height, orientation: 1, complete };
}

/** Size of a GIF (GIF89a specification, 1990). The first picture of a moving one is used. */
function gifHeader(bytes: Uint8Array): PhotoHeader | null {
  if (!spells(bytes, 0, 'GIF87a') && !spells(bytes, 0, 'GIF89a')) return null;
  const width = littlePair(bytes, 6);
  const height = littlePair(bytes, 8);
  return { kind: 'gif', width, height, orientation: 1, complete: bytes.length > 13 };
}

interface Found {
  width: number;
  height: number;
  quarters: number;
}

const holders = ['meta', 'iprp', 'ipco'];

/** Looks through the nested boxes for the largest size and a turn by quarters. */
function look(bytes: Uint8Array, from: number, end: number, found: Found): void {
  for (let at = from; at + 8 <= end; ) {
    const size = bigFour(bytes, at);
    const stop = size === 0 ? end : Math.min(end, at + size);
    if (size !== 0 && size < 8) return; // 1 = a box of over 4 GB, never around a header
    const holder = holders.find((name) => spells(bytes, at + 4, name));
    if (holder) look(bytes, at + (holder === 'meta' ? 12 : 8), stop, found);
    if (spells(bytes, at + 4, 'ispe')) {
      const width = bigFour(bytes, at + 12);
      const height = bigFour(bytes, at + 16);
      if (width * height > found.width * found.height) Object.assign(found, { width, height });
    }
    if (spells(bytes, at + 4, 'irot')) found.quarters = byteAt(bytes, at + 8) % 4;
    at = stop;
  }
}

/** The format's brand: the main one, then those it is compatible with. */
function kindOf(bytes: Uint8Array): 'avif' | 'heic' | null {
  const end = Math.min(bytes.length, bigFour(bytes, 0), 256);
  const brands: number[] = [];
  for (let at = 8; at + 4 <= end; at += at === 8 ? 8 : 4) brands.push(at);
  const is = (names: readonly string[]): boolean =>
    brands.some((at) => names.some((name) => spells(bytes, at, name)));
  if (is(['avif', 'avis'])) return 'avif';
  return is(['heic', 'heix', 'heim', 'heis', 'hevc', 'hevx', 'mif1', 'msf1']) ? 'heic' : null;
}

/**
 * Kind, size and turn of a picture in the HEIF container (ISO/IEC 23008-12): AVIF or HEIC. The
 * largest size told is taken, since thumbnails and tiles tell theirs too. A turn to the left by
 * quarters (irot) is given as the EXIF orientation that does the same.
 */
function heifHeader(bytes: Uint8Array): PhotoHeader | null {
  if (!spells(bytes, 4, 'ftyp')) return null;
  const kind = kindOf(bytes);
  if (!kind) return null;
  const found: Found = { width: 0, height: 0, quarters: 0 };
  look(bytes, 0, bytes.length, found);
  const orientation = [1, 8, 3, 6][found.quarters] ?? 1;
  return { kind, width: found.width, height: found.height, orientation, complete: true };
}

/** Size of a BMP: rows from the bottom are told by a positive height, from the top by a negative. */
function bmpHeader(bytes: Uint8Array): PhotoHeader | null {
  if (!spells(bytes, 0, 'BM') || bytes.length < 26) return null;
  const old = littleFour(bytes, 14) === 12; // the oldest header holds its sizes in two bytes each
  const width = old ? littlePair(bytes, 18) : littleFour(bytes, 18);
  const tall = old ? littlePair(bytes, 20) : littleFour(bytes, 22);
  const height = tall > 0x7fffffff ? 0x100000000 - tall : tall;
  return { kind: 'bmp', width, height, orientation: 1, complete: bytes.length > 26 };
}

const formats = [jpegHeader, pngHeader, webpHeader, gifHeader, heifHeader, bmpHeader];

/** What the bytes of a whole file say; null where they are no picture this app knows. Never throws. */
export function photoHeader(bytes: Uint8Array): PhotoHeader | null {
  for (const format of formats) {
    const header = format(bytes);
    if (header) return header;
  }
  return null;
}

/** Size in px once the photo stands upright. */
export const uprightSize = (header: PhotoHeader): PixelSize =>
  header.orientation >= 5
    ? { width: header.height, height: header.width }
    : { width: header.width, height: header.height };

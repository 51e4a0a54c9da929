import type { PixelSize } from '../raster/size.ts';

/** Markers of a frame: SOF0..SOF15 without DHT (C4), JPG (C8) and DAC (CC), which share the row. */
export const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;

/** Past the coded pixels behind a scan header: the place of the next true marker, or the end. */
function afterScan(bytes: Uint8Array, from: number): number {
  let offset = from;
  while (offset < bytes.length) {
    offset = bytes.indexOf(0xff, offset);
    if (offset < 0) return bytes.length;
    const next = byteAt(bytes, offset + 1);
    // FF00 is a stuffed byte, FFD0..FFD7 restart the coder, FFFF is fill.
    if (next !== 0 && next !== 0xff && (next < 0xd0 || next > 0xd7)) return offset;
    offset += next === 0xff ? 1 : 2;
  }
  return bytes.length;
}

/**
 * Size, orientation and completeness of a JPEG (ITU-T T.81): walks the segments from marker to
 * marker up to the end marker, so that data a phone hangs on behind the picture does no harm.
 * The size is that of the frame; what EXIF says about it is not believed.
 */
function jpegHeader(bytes: Uint8Array): PhotoHeader | null {
  if (bigPair(bytes, 0) !== 0xffd8) return null;
  let width = 0;
  let height = 0;
  let orientation = 0;
  let complete = false;
  let offset = 2;
  while (offset + 1 < bytes.length) {
    if (bytes[offset] !== 0xff) break; // not a marker: damaged from here on
    const marker = byteAt(bytes, offset + 1);
    if (marker === 0xff) {
      offset += 1;
      continue;
    }
    if (marker === 0xd9) {
      complete = true;
      break;
    }
    const length = bigPair(bytes, offset + 2);
    if (length < 2) break;
    if (isFrame(marker) && width === 0) {
      height = bigPair(bytes, offset + 5);
      width = bigPair(bytes, offset + 7);
    } else if (marker === 0xe1 && orientation === 0 && spells(bytes, offset + 4, 'Exif')) {
      const end = Math.min(bytes.length, offset + 2 + length);
      orientation = exifOrientation(bytes, offset + 10, end);
    }
    offset = marker === 0xda ? afterScan(bytes, offset + 2 + length) : offset + 2 + length;
  }
  return { kind: 'jpeg', width, height, orientation: orientation || 1, complete };
}

const orientationTag = 0x0112;

/**
 * EXIF orientation 1..8 of a TIFF block that starts at `start` and ends before `end`; 1 where it is
 * absent, out of range or the block is broken. Source: CIPA DC-008 (EXIF 2.32), TIFF 6.0.
 */
function exifOrientation(bytes: Uint8Array, start: number, end: number): number {
  const little = spells(bytes, start, 'II');
  if (!little && !spells(bytes, start, 'MM')) return 1;
  const pair = little ? littlePair : bigPair;
  const four = little ? littleFour : bigFour;
  const directory = start + four(bytes, start + 4);
  if (directory + 2 > end) return 1;
  const count = Math.min(pair(bytes, directory), Math.floor((end - directory - 2) / 12));
  for (let i = 0; i < count; i++) {
    const entry = directory + 2 + i * 12;
    if (pair(bytes, entry) !== orientationTag) continue;
    const value = pair(bytes, entry + 8);
    return value >= 1 && value <= 8 ? value : 1;
  }
  return 1;
}

/** Picture formats told apart by their content, never by the file's name. */
type PhotoKind = 'jpeg' | 'png' | 'gif' | 'webp' | 'bmp' | 'avif' | 'heic';

/** What a photo's own bytes say about it, before anything is decoded. */
export interface PhotoHeader {
  readonly kind: PhotoKind;
  /** Size as stored, px, before the camera's turn is undone; 0 where the file does not say. */
  readonly width: number;
  readonly height: number;
  /** EXIF orientation 1..8; 1 where there is none or it is broken. 5..8 swap the sides. */
  readonly orientation: number;
  /** False where the bytes end before the picture does. */
  readonly complete: boolean;
}

/** Unsigned numbers out of bytes; what lies outside the bytes reads as 0, so no header can throw. */
export const byteAt = (bytes: Uint8Array, offset: number): number => bytes[offset] ?? 0;

/** Two bytes, most significant first. */
export const bigPair = (bytes: Uint8Array, offset: number): number =>
  byteAt(bytes, offset) * 256 + byteAt(bytes, offset + 1);

/** Four bytes, most significant first. */
export const bigFour = (bytes: Uint8Array, offset: number): number =>
  bigPair(bytes, offset) * 65536 + bigPair(bytes, offset + 2);

/** Two bytes, least significant first. */
export const littlePair = (bytes: Uint8Array, offset: number): number =>
  byteAt(bytes, offset) + byteAt(bytes, offset + 1) * 256;

/** Four bytes, least significant first. */
export const littleFour = (bytes: Uint8Array, offset: number): number =>
  littlePair(bytes, offset) + littlePair(bytes, offset + 2) * 65536;

/** True where the ASCII text stands at that place. */
export function spells(bytes: Uint8Array, offset: number, text: string): boolean {
  for (let i = 0; i < text.length; i++) if (bytes[offset + i] !== text.charCodeAt(i)) return false;
  return true;
}

/** Size and completeness of a PNG (ISO/IEC 15948): whole only if its end chunk is there. */
function pngHeader(bytes: Uint8Array): PhotoHeader | null {
  if (bytes[0] !== 0x89 || !spells(bytes, 1, 'PNG\r\n')) return null;
  let complete = false;
  for (let offset = 8; offset + 12 <= bytes.length; offset += 12 + bigFour(bytes, offset)) {
    if (spells(bytes, offset + 4, 'IEND')) complete = true;
  }
  const width = bigFour(bytes, 16);
  const height = bigFour(bytes, 20);
  return { kind: 'png', width, height, orientation: 1, complete };
}

const littleThree = (bytes: Uint8Array, offset: number): number =>
  littlePair(bytes, offset) + byteAt(bytes, offset + 2) * 65536;

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
  for (let offset = from; offset + 8 <= end; ) {
    const size = bigFour(bytes, offset);
    const stop = size === 0 ? end : Math.min(end, offset + size);
    if (size !== 0 && size < 8) return; // 1 = a box of over 4 GB, never around a header
    const holder = holders.find((name) => spells(bytes, offset + 4, name));
    if (holder) look(bytes, offset + (holder === 'meta' ? 12 : 8), stop, found);
    if (spells(bytes, offset + 4, 'ispe')) {
      const width = bigFour(bytes, offset + 12);
      const height = bigFour(bytes, offset + 16);
      if (width * height > found.width * found.height) Object.assign(found, { width, height });
    }
    if (spells(bytes, offset + 4, 'irot')) found.quarters = byteAt(bytes, offset + 8) % 4;
    offset = stop;
  }
}

/** The format's brand: the main one, then those it is compatible with. */
function kindOf(bytes: Uint8Array): 'avif' | 'heic' | null {
  const end = Math.min(bytes.length, bigFour(bytes, 0), 256);
  const brands: number[] = [];
  for (let offset = 8; offset + 4 <= end; offset += offset === 8 ? 8 : 4) brands.push(offset);
  const is = (names: readonly string[]): boolean =>
    brands.some((offset) => names.some((name) => spells(bytes, offset, name)));
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
export const uprightSize = (
  header: Pick<PhotoHeader, 'width' | 'height' | 'orientation'>,
): PixelSize =>
  header.orientation >= 5
    ? { width: header.height, height: header.width }
    : { width: header.width, height: header.height };

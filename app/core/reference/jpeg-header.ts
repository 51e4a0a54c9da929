import {
  bigFour,
  bigPair,
  byteAt,
  littleFour,
  littlePair,
  type PhotoHeader,
  spells,
} from './photo-bytes.ts';

// SOF0..SOF15 without DHT (C4), JPG (C8) and DAC (CC), which share the row.
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;

/** Past the coded pixels behind a scan header: the place of the next true marker, or the end. */
function afterScan(bytes: Uint8Array, from: number): number {
  let at = from;
  while (at < bytes.length) {
    at = bytes.indexOf(0xff, at);
    if (at < 0) return bytes.length;
    const next = byteAt(bytes, at + 1);
    // FF00 is a stuffed byte, FFD0..FFD7 restart the coder, FFFF is fill.
    if (next !== 0 && next !== 0xff && (next < 0xd0 || next > 0xd7)) return at;
    at += next === 0xff ? 1 : 2;
  }
  return bytes.length;
}

/**
 * Size, orientation and completeness of a JPEG (ITU-T T.81): walks the segments from marker to
 * marker up to the end marker, so that data a phone hangs on behind the picture does no harm.
 * The size is that of the frame; what EXIF says about it is not believed.
 */
export function jpegHeader(bytes: Uint8Array): PhotoHeader | null {
  if (bigPair(bytes, 0) !== 0xffd8) return null;
  let width = 0;
  let height = 0;
  let orientation = 0;
  let complete = false;
  let at = 2;
  while (at + 1 < bytes.length) {
    if (bytes[at] !== 0xff) break; // not a marker: damaged from here on
    const marker = byteAt(bytes, at + 1);
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (marker === 0xd9) {
      complete = true;
      break;
    }
    const length = bigPair(bytes, at + 2);
    if (length < 2) break;
    if (isFrame(marker) && width === 0) {
      height = bigPair(bytes, at + 5);
      width = bigPair(bytes, at + 7);
    } else if (marker === 0xe1 && orientation === 0 && spells(bytes, at + 4, 'Exif')) {
      const end = Math.min(bytes.length, at + 2 + length);
      orientation = exifOrientation(bytes, at + 10, end);
    }
    at = marker === 0xda ? afterScan(bytes, at + 2 + length) : at + 2 + length;
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

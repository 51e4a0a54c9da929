import { jpegSegments } from '../../../app/core/reference/jpeg-segments.ts';
import { pngChunks } from '../../../app/core/reference/png-chunks.ts';
import { type Random, seeded } from '../seeded.ts';
import { below, joined, oneOf, spoiltBytes } from '../spoilt-bytes.ts';

/** The cases that are spoilt: every kind of photo, tagged, turned, wide, moving, deep, see-through. */
export const photosToSpoil = [
  ...['exif-orient-1.jpg', 'exif-orient-6.jpg', 'patches-p3-tagged.jpg', 'cmyk-adobe-marker.jpg'],
  ...['patches-p3-tagged.png', 'png-16bit-rgb.png', 'png-alpha-hidden-black.png', 'three-tone.png'],
  ...['animated.webp', 'animated.gif', 'picture.avif', 'picture.heic'],
] as const;

/** Where the parts of a photo begin: chunks of a PNG, segments of a JPEG, four bytes of anything else. */
function startsIn(random: Random, bytes: Uint8Array): number[] {
  const chunks = [...pngChunks(bytes)].map(({ start }) => start);
  if (chunks.length > 1) return chunks;
  const segments = bytes[0] === 0xff ? [...jpegSegments(bytes)].map(({ start }) => start - 2) : [];
  if (segments.length > 1) return segments;
  return [0, 1, 2].map(() => 4 * below(random, bytes.length / 4)).sort((a, b) => a - b);
}

/** CRC-32 by its definition, bit by bit (W3C PNG, third edition, annex D). */
function sumOf(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  }
  return (sum ^ 0xffffffff) >>> 0;
}

/** Puts sums of a PNG right, so that what was changed in it is believed. */
function believed(bytes: Uint8Array<ArrayBuffer>): Uint8Array<ArrayBuffer> {
  const view = new DataView(bytes.buffer);
  for (const { start, end } of pngChunks(bytes))
    view.setUint32(end - 4, sumOf(bytes.subarray(start + 4, end - 4)));
  return bytes;
}

/** A part left out, doubled, put elsewhere, or its first bytes (length, size, kind) changed. */
function spoiltParts(random: Random, bytes: Uint8Array): Uint8Array<ArrayBuffer> {
  const starts = [...new Set([0, ...startsIn(random, bytes), bytes.length])];
  const parts = starts.slice(1).map((end, i) => new Uint8Array(bytes.subarray(starts[i], end)));
  const place = below(random, parts.length);
  const part = oneOf(random, parts);
  switch (below(random, 4)) {
    case 0:
      parts.splice(place, 1);
      break;
    case 1:
      parts.splice(place, 0, part);
      break;
    case 2:
      [parts[place], parts[parts.indexOf(part)]] = [part, parts[place] ?? part];
      break;
    default:
      part[below(random, Math.min(24, part.length))] = oneOf(random, [
        ...[0, 1, 0x7f, 0x80, 0xff, below(random, 256)],
      ]);
  }
  const out = joined(...parts);
  return random() < 0.7 ? believed(out) : out;
}

/** A photo spoilt in one way, or three at once: the same for the same seed. */
export function spoiltPhoto(seed: number, whole: Uint8Array): Uint8Array<ArrayBuffer> {
  const random = seeded(seed);
  let bytes = new Uint8Array(whole);
  const times = random() < 0.7 ? 1 : 3;
  for (let i = 0; i < times && bytes.length > 0; i++)
    bytes = random() < 0.5 ? spoiltBytes(random, bytes) : spoiltParts(random, bytes);
  return bytes;
}

/** A clear sentence: cause and what to do, nothing that only a programmer says. */
export const clearSentence =
  /^(?!.*(Error\b|Exception|undefined|null|NaN|\[object|\bat \w+ \())[A-Z][^{}<>]{20,}\.$/;

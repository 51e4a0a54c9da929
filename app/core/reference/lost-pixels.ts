import { jpegSegments } from './jpeg-segments.ts';
import { bigPair, byteAt, isFrame } from './photo-header.ts';

/** So many bytes of nothing in a row are a hole in the file (own): ten blocks and more with every coefficient at -1. */
const holeBytes = 256;

/** Sequential frames with Huffman codes: baseline and extended (ITU-T T.81, table B.1). */
const sequential = [0xc0, 0xc1];
const huffmanTables = 0xc4;

/** Whether in the table of lightness among those from `at` to `end` a code of nothing but 0 ends a block: then flat areas are zeros too. */
function zerosMayBeFlat(bytes: Uint8Array, at: number, end: number): boolean {
  let offset = at;
  while (offset + 17 <= end) {
    const isForDetail = byteAt(bytes, offset) === 0x10; // of lightness, with which a scan begins
    const shortest = byteAt(bytes, offset + 17); // codes are given out in order: the first one is all 0
    if (isForDetail && shortest === 0) return true;
    let codes = 0;
    for (let length = 1; length <= 16; length++) codes += byteAt(bytes, offset + length);
    offset += 17 + codes;
  }
  return false;
}

/** Whether there is a hole in the first scan's coded pixels. */
function hasHole(bytes: Uint8Array, from: number): boolean {
  let zeros = 0;
  for (let offset = from; offset < bytes.length; offset++) {
    if (bytes[offset] === 0) {
      zeros++;
      if (zeros === holeBytes) return true;
      continue;
    }
    zeros = 0;
    if (bytes[offset] !== 0xff) continue;
    const next = byteAt(bytes, offset + 1);
    const goesOn = next === 0 || next === 0xff || (next >= 0xd0 && next <= 0xd7);
    if (!goesOn) return false; // what a phone hangs on behind the picture is no matter
  }
  return false;
}

/**
 * Whether part of a JPEG's coded pixels is overwritten by nothing, as after a broken copy or a bad card: decoders fill
 * the rest with grey and say no word. Told only where such bytes can't be a picture; true is sure, false is not.
 */
export function hasLostPixels(bytes: Uint8Array): boolean {
  if (bigPair(bytes, 0) !== 0xffd8) return false;
  let scan = 2;
  let isSequential = false;
  for (const { marker, start } of jpegSegments(bytes)) {
    scan = start + Math.max(2, bigPair(bytes, start));
    if (isFrame(marker)) isSequential = sequential.includes(marker);
    if (marker === huffmanTables && zerosMayBeFlat(bytes, start + 2, scan)) return false;
  }
  if (!isSequential || byteAt(bytes, scan + 1) !== 0xda) return false;
  return hasHole(bytes, scan + 2 + bigPair(bytes, scan + 2));
}

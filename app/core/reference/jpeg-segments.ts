import { bigPair, byteAt } from './photo-header.ts';

/** A segment of a JPEG before its coded pixels: its marker, and where its length stands. */
interface JpegSegment {
  readonly marker: number;
  readonly start: number;
}

/** Segments of a JPEG up to the first scan (ITU-T T.81, annex B); none of what is no JPEG. */
export function* jpegSegments(bytes: Uint8Array): Generator<JpegSegment> {
  for (let offset = 2; byteAt(bytes, offset) === 0xff; ) {
    const marker = byteAt(bytes, offset + 1);
    if (marker === 0xff) {
      offset += 1; // a byte of filling
      continue;
    }
    if (marker === 0xda || marker === 0xd9) return;
    yield { marker, start: offset + 2 };
    offset += 2 + Math.max(2, bigPair(bytes, offset + 2));
  }
}

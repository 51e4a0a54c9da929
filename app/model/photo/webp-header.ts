import { byteAt, littleFour, littlePair, spells } from './byte-fields.ts';
import type { PhotoHeader } from './header-fields.ts';

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
export function webpHeader(bytes: Uint8Array): PhotoHeader | null {
  if (!spells(bytes, 0, 'RIFF') || !spells(bytes, 8, 'WEBP')) return null;
  const [width, height] = sizeOf(bytes);
  const complete = bytes.length >= littleFour(bytes, 4) + 8;
  return { kind: 'webp', width, height, orientation: 1, complete };
}

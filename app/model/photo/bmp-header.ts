import { littleFour, littlePair, spells } from './byte-fields.ts';
import type { PhotoHeader } from './header-fields.ts';

/** Size of a BMP: rows from the bottom are told by a positive height, from the top by a negative. */
export function bmpHeader(bytes: Uint8Array): PhotoHeader | null {
  if (!spells(bytes, 0, 'BM') || bytes.length < 26) return null;
  const old = littleFour(bytes, 14) === 12; // the oldest header holds its sizes in two bytes each
  const width = old ? littlePair(bytes, 18) : littleFour(bytes, 18);
  const tall = old ? littlePair(bytes, 20) : littleFour(bytes, 22);
  const height = tall > 0x7fffffff ? 0x100000000 - tall : tall;
  return { kind: 'bmp', width, height, orientation: 1, complete: bytes.length > 26 };
}

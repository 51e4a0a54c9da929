import { bigFour, spells } from './byte-fields.ts';
import type { PhotoHeader } from './header-fields.ts';

/** Size and completeness of a PNG (ISO/IEC 15948): whole only if its end chunk is there. */
export function pngHeader(bytes: Uint8Array): PhotoHeader | null {
  if (bytes[0] !== 0x89 || !spells(bytes, 1, 'PNG\r\n')) return null;
  let complete = false;
  for (let at = 8; at + 12 <= bytes.length; at += 12 + bigFour(bytes, at)) {
    if (spells(bytes, at + 4, 'IEND')) complete = true;
  }
  const width = bigFour(bytes, 16);
  const height = bigFour(bytes, 20);
  return { kind: 'png', width, height, orientation: 1, complete };
}

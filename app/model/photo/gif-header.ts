import { littlePair, spells } from './byte-fields.ts';
import type { PhotoHeader } from './header-fields.ts';

/** Size of a GIF (GIF89a specification, 1990). The first picture of a moving one is used. */
export function gifHeader(bytes: Uint8Array): PhotoHeader | null {
  if (!spells(bytes, 0, 'GIF87a') && !spells(bytes, 0, 'GIF89a')) return null;
  const width = littlePair(bytes, 6);
  const height = littlePair(bytes, 8);
  return { kind: 'gif', width, height, orientation: 1, complete: bytes.length > 13 };
}

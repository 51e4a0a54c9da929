import { bigFour, byteAt, spells } from './byte-fields.ts';
import type { PhotoHeader } from './header-fields.ts';

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
export function heifHeader(bytes: Uint8Array): PhotoHeader | null {
  if (!spells(bytes, 4, 'ftyp')) return null;
  const kind = kindOf(bytes);
  if (!kind) return null;
  const found: Found = { width: 0, height: 0, quarters: 0 };
  look(bytes, 0, bytes.length, found);
  const orientation = [1, 8, 3, 6][found.quarters] ?? 1;
  return { kind, width: found.width, height: found.height, orientation, complete: true };
}

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
export const byteAt = (bytes: Uint8Array, at: number): number => bytes[at] ?? 0;

/** Two bytes, most significant first. */
export const bigPair = (bytes: Uint8Array, at: number): number =>
  byteAt(bytes, at) * 256 + byteAt(bytes, at + 1);

/** Four bytes, most significant first. */
export const bigFour = (bytes: Uint8Array, at: number): number =>
  bigPair(bytes, at) * 65536 + bigPair(bytes, at + 2);

/** Two bytes, least significant first. */
export const littlePair = (bytes: Uint8Array, at: number): number =>
  byteAt(bytes, at) + byteAt(bytes, at + 1) * 256;

/** Four bytes, least significant first. */
export const littleFour = (bytes: Uint8Array, at: number): number =>
  littlePair(bytes, at) + littlePair(bytes, at + 2) * 65536;

/** True where the ASCII text stands at that place. */
export function spells(bytes: Uint8Array, at: number, text: string): boolean {
  for (let i = 0; i < text.length; i++) if (bytes[at + i] !== text.charCodeAt(i)) return false;
  return true;
}

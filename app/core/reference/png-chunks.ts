import { bigFour, spells } from './photo-header.ts';

const isPng = (bytes: Uint8Array): boolean => bytes[0] === 0x89 && spells(bytes, 1, 'PNG\r\n');

/** A chunk of a PNG that is there whole. */
interface PngChunk {
  /** Four letters. */
  readonly name: string;
  /** Where its length stands, where its data does, and behind its check sum. */
  readonly start: number;
  readonly data: number;
  readonly end: number;
}

/** Chunks of a PNG (W3C PNG, third edition, 5.3), up to the first that is cut short. */
export function* pngChunks(bytes: Uint8Array): Generator<PngChunk> {
  for (let start = 8; start + 12 <= bytes.length; ) {
    const end = start + 12 + bigFour(bytes, start);
    if (end > bytes.length) return;
    const name = String.fromCharCode(...bytes.subarray(start + 4, start + 8));
    yield { name, start, data: start + 8, end };
    start = end;
  }
}

const hiddenText = ['tEXt', 'zTXt', 'iTXt'];
const profiles = ['Raw profile type exif', 'Raw profile type APP1', 'Raw profile type xmp'];

/** Tags written as text, or packed: nobody sees into them by their bytes. */
function hidesTags(bytes: Uint8Array, { name, data }: PngChunk): boolean {
  if (!hiddenText.includes(name)) return false;
  if (profiles.some((profile) => spells(bytes, data, profile))) return true;
  const keyword = 'XML:com.adobe.xmp\0';
  return spells(bytes, data, keyword) && bytes[data + keyword.length] === 1;
}

/** A PNG (W3C PNG, third edition) without chunks of text that hold tags as text or packed; all else as it is. */
export function withoutHiddenText(bytes: Uint8Array): Uint8Array {
  if (!isPng(bytes)) return bytes;
  const hidden = [...pngChunks(bytes)].filter((chunk) => hidesTags(bytes, chunk));
  if (hidden.length === 0) return bytes;
  const left = bytes.length - hidden.reduce((sum, { start, end }) => sum + end - start, 0);
  const out = new Uint8Array(left);
  let [from, to] = [0, 0];
  for (const { start, end } of [...hidden, { start: bytes.length, end: bytes.length }]) {
    out.set(bytes.subarray(from, start), to);
    to += start - from;
    from = end;
  }
  return out;
}

/** Puts the check sums of a PNG's chunks of tags right, in place. */
export function withTrueSums(bytes: Uint8Array): void {
  if (!isPng(bytes)) return;
  for (const { name, start, end } of pngChunks(bytes)) {
    if (name !== 'eXIf' && name !== 'iTXt') continue;
    const sum = checkSum(bytes, start + 4, end - 4);
    for (let i = 0; i < 4; i++) bytes[end - 4 + i] = (sum >>> (24 - 8 * i)) & 0xff;
  }
}

/** CRC-32 of a chunk's name and data (W3C PNG, annex D). */
function checkSum(bytes: Uint8Array, from: number, end: number): number {
  let sum = 0xffffffff;
  for (let i = from; i < end; i++) {
    sum ^= bytes[i];
    for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  }
  return (sum ^ 0xffffffff) >>> 0;
}

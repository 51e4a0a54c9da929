import { bigFour, spells } from './photo-header.ts';

const isPng = (bytes: Uint8Array): boolean => bytes[0] === 0x89 && spells(bytes, 1, 'PNG\r\n');

interface Chunk {
  /** Where its length stands. */
  readonly start: number;
  /** Behind its check sum. */
  readonly end: number;
}

function chunksOf(bytes: Uint8Array): Chunk[] {
  const chunks: Chunk[] = [];
  for (let start = 8; start + 12 <= bytes.length; ) {
    const end = start + 12 + bigFour(bytes, start);
    if (end > bytes.length) break;
    chunks.push({ start, end });
    start = end;
  }
  return chunks;
}

const hiddenText = ['tEXt', 'zTXt', 'iTXt'];
const profiles = ['Raw profile type exif', 'Raw profile type APP1', 'Raw profile type xmp'];

/** Tags written as text, or packed: nobody sees into them by their bytes. */
function hidesTags(bytes: Uint8Array, { start }: Chunk): boolean {
  const data = start + 8;
  if (!hiddenText.some((name) => spells(bytes, start + 4, name))) return false;
  if (profiles.some((name) => spells(bytes, data, name))) return true;
  const keyword = 'XML:com.adobe.xmp\0';
  return spells(bytes, data, keyword) && bytes[data + keyword.length] === 1;
}

/** A PNG (W3C PNG, third edition) without chunks of text that hold tags as text or packed; all else as it is. */
export function withoutHiddenText(bytes: Uint8Array): Uint8Array {
  if (!isPng(bytes)) return bytes;
  const hidden = chunksOf(bytes).filter((chunk) => hidesTags(bytes, chunk));
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
  for (const { start, end } of chunksOf(bytes)) {
    if (!['eXIf', 'iTXt'].some((name) => spells(bytes, start + 4, name))) continue;
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

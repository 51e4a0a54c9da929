import { bigFour, bigPair, littleFour, littlePair, spells } from './photo-header.ts';
import { withoutHiddenText, withTrueSums } from './png-chunks.ts';

/**
 * A photo without the tags that say where it was taken; all else stays byte for byte, and at its place. What has none
 * is handed back as it is.
 *
 * EXIF says it in an image file directory of its own, GPS (CIPA DC-008, EXIF 2.32, 4.6.6; TIFF 6.0): every TIFF block
 * of the file is looked for, whatever holds it (a JPEG's APP1, a PNG's eXIf, a WebP's EXIF, an item of HEIC or AVIF, a
 * second picture behind the first), and its directory keeps the version alone. XMP says it in exif:GPS properties
 * (Adobe XMP, part 2), which become blanks. A video behind a photo says it in an atom of its own (QuickTime File
 * Format, Apple), whose figures become noughts. Names of places that somebody typed are not looked for.
 */
export function hideLocation(photo: Uint8Array): Uint8Array {
  const bytes = withoutHiddenText(new Uint8Array(photo));
  const changed = [hideInBlocks(bytes), hideInXmp(bytes), hideInVideo(bytes)].some(Boolean);
  if (changed) withTrueSums(bytes);
  return changed || bytes.length !== photo.length ? bytes : photo;
}

const gpsPointer = 0x8825;
const exifPointer = 0x8769;

/** Bytes of one value of each type of TIFF 6.0, by its number. */
const valueBytes = [0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8];

/** One block of tags: offsets within it count from `start`. */
interface Block {
  readonly bytes: Uint8Array;
  readonly start: number;
  readonly pair: (bytes: Uint8Array, offset: number) => number;
  readonly four: (bytes: Uint8Array, offset: number) => number;
}

const entryBytes = 12;
/** No camera writes as many tags into one directory: more is no directory (own). */
const mostEntries = 512;
/** Longer than any value of a place: what says so is broken, and what lies there is not blanked (own). */
const longestValue = 65_536;

function hideInBlocks(bytes: Uint8Array): boolean {
  let changed = false;
  for (let start = 0; start + 8 < bytes.length; start++) {
    const first = bytes[start];
    if (first !== 0x49 && first !== 0x4d) continue;
    if (spells(bytes, start, 'II*\0'))
      changed = hideInBlock({ bytes, start, pair: littlePair, four: littleFour }) || changed;
    else if (spells(bytes, start, 'MM\0*'))
      changed = hideInBlock({ bytes, start, pair: bigPair, four: bigFour }) || changed;
  }
  return changed;
}

/** The places of the entries of a directory; none where no directory can lie there. */
function entriesOf({ bytes, pair }: Block, directory: number): number[] {
  const count = pair(bytes, directory);
  const end = directory + 2 + count * entryBytes;
  if (count === 0 || count > mostEntries || end > bytes.length) return [];
  const places = Array.from({ length: count }, (_, i) => directory + 2 + i * entryBytes);
  const known = places.every((place) => {
    const type = pair(bytes, place + 2);
    return type > 0 && type < valueBytes.length;
  });
  return known ? places : [];
}

/** The directories of the pictures, and those of their EXIF. */
function hideInBlock(block: Block): boolean {
  const { bytes, start, pair, four } = block;
  let changed = false;
  const seen = new Set<number>();
  const waiting = [four(bytes, start + 4)];
  for (let offset = waiting.pop(); offset !== undefined; offset = waiting.pop()) {
    if (offset < 8 || seen.has(offset) || seen.size > 16) continue;
    seen.add(offset);
    const entries = entriesOf(block, start + offset);
    for (const entry of entries) {
      const tag = pair(bytes, entry);
      if (tag === exifPointer) waiting.push(four(bytes, entry + 8));
      if (tag === gpsPointer && blank(block, start + four(bytes, entry + 8))) changed = true;
    }
    const last = entries[entries.length - 1];
    if (last !== undefined) waiting.push(four(bytes, last + entryBytes));
  }
  return changed;
}

/** What the directory keeps: GPSVersionID (tag 0) 2.3.0.0, so that it is a whole directory still. */
const version = { count: 1, tag: 0, type: 1, values: 4, value: [2, 3, 0, 0] } as const;

function blank(block: Block, directory: number): boolean {
  const { bytes, start, pair, four } = block;
  const entries = entriesOf(block, directory);
  if (entries.every((entry) => pair(bytes, entry) === version.tag)) return false;
  for (const entry of entries) {
    const length = four(bytes, entry + 4) * valueBytes[pair(bytes, entry + 2)];
    const from = start + four(bytes, entry + 8);
    if (length > 4 && length <= longestValue) bytes.fill(0, from, from + length);
  }
  bytes.fill(0, directory, directory + 2 + entries.length * entryBytes + 4);
  const low = pair === littlePair ? 0 : 1;
  bytes[directory + low] = version.count;
  bytes[directory + 4 + low] = version.type;
  bytes[directory + 6 + 3 * low] = version.values;
  bytes.set(version.value, directory + 10);
  return true;
}

const xmpStart = 'exif:GPS';
const [blankSign, quote, apostrophe, greater, less] = [0x20, 0x22, 0x27, 0x3e, 0x3c];
/** Longer than any property of a place (own). */
const longestProperty = 4096;

/** `exif:GPSLatitude="..."`, or `<exif:GPSLatitude>...</exif:GPSLatitude>` with its signs round it. */
function hideInXmp(bytes: Uint8Array): boolean {
  let changed = false;
  for (let place = bytes.indexOf(0x65); place >= 0; place = bytes.indexOf(0x65, place + 1)) {
    if (!spells(bytes, place, xmpStart)) continue;
    const end = endOfProperty(bytes, place);
    if (end === null) continue;
    bytes.fill(blankSign, bytes[place - 1] === less ? place - 1 : place, end);
    changed = true;
  }
  return changed;
}

function endOfProperty(bytes: Uint8Array, place: number): number | null {
  const limit = Math.min(bytes.length, place + longestProperty);
  if (bytes[place - 1] === less) {
    const close = find(place, limit, (i) => spells(bytes, i, `</${xmpStart}`));
    const end = close === null ? null : find(close, limit, (i) => bytes[i] === greater);
    return end === null ? null : end + 1;
  }
  const open = find(place, limit, (i) => bytes[i] === quote || bytes[i] === apostrophe);
  const end = open === null ? null : find(open + 1, limit, (i) => bytes[i] === bytes[open]);
  return end === null ? null : end + 1;
}

function find(from: number, until: number, is: (place: number) => boolean): number | null {
  for (let place = from; place < until; place++) if (is(place)) return place;
  return null;
}

const isFigure = (code: number): boolean => code >= 0x30 && code <= 0x39;
const partsOfPlace = '+-./0123456789';

/** The atom ©xyz and the value of com.apple.quicktime.location: '+52.5200+013.4050/' (ISO 6709). */
function hideInVideo(bytes: Uint8Array): boolean {
  let changed = false;
  for (let place = 0; place + 8 < bytes.length; place++) {
    const code = bytes[place];
    if ((code !== 0x2b && code !== 0x2d) || !isFigure(bytes[place + 1])) continue;
    let end = place;
    while (end - place < 64 && partsOfPlace.includes(String.fromCharCode(bytes[end]))) end++;
    if (!isPlace(String.fromCharCode(...bytes.subarray(place, end)))) continue;
    for (let i = place; i < end; i++) if (isFigure(bytes[i])) bytes[i] = 0x30;
    changed = true;
  }
  return changed;
}

const isPlace = (text: string): boolean =>
  /^[+-]\d{2,6}\.\d{2,}[+-]\d{3,7}\.\d{2,}([+-]\d+(\.\d+)?)?\/$/.test(text) && /[1-9]/.test(text);

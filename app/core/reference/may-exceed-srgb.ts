import { jpegSegments } from './jpeg-segments.ts';
import { bigFour, bigPair, byteAt, littleFour, spells } from './photo-header.ts';
import { pngChunks } from './png-chunks.ts';

/** Red, green, blue of sRGB as profiles give them: X, Y, Z adapted to D50 (ICC.1, IEC 61966-2-1). */
const srgbColorants = [
  ['rXYZ', [0.4361, 0.2225, 0.0139]],
  ['gXYZ', [0.3851, 0.7169, 0.0971]],
  ['bXYZ', [0.1431, 0.0606, 0.7139]],
] as const;

/** Profiles of sRGB differ among themselves in the fourth decimal; Display P3 by 0.08 in its red. */
const sameColorant = 0.005;

const mostTags = 100;

/** A signed number of 16 bits before and 16 after the point. */
function fixedPoint(bytes: Uint8Array, offset: number): number {
  const value = bigFour(bytes, offset);
  return (value > 0x7fffffff ? value - 0x100000000 : value) / 65536;
}

/** Where a tag of the profile has its data, or 0 without it. */
function findTag(bytes: Uint8Array, profile: number, name: string): number {
  const count = Math.min(mostTags, bigFour(bytes, profile + 128));
  for (let i = 0; i < count; i++) {
    const entry = profile + 132 + 12 * i;
    if (spells(bytes, entry, name)) return profile + bigFour(bytes, entry + 4);
  }
  return 0;
}

/**
 * Whether the ICC profile that starts there (ICC.1:2022) is one of red, green and blue other than
 * those of sRGB. One of inks or of grey isn't, nor what is no profile.
 */
function isOtherRgbProfile(bytes: Uint8Array, profile: number): boolean {
  if (!spells(bytes, profile + 36, 'acsp') || !spells(bytes, profile + 16, 'RGB ')) return false;
  return srgbColorants.some(([name, xyz]) => {
    const tag = findTag(bytes, profile, name);
    return (
      !tag || xyz.some((v, i) => Math.abs(fixedPoint(bytes, tag + 8 + 4 * i) - v) > sameColorant)
    );
  });
}

/** The profile stands in the segment APP2, long ones in several (ICC.1:2022, B.4): the first will do. */
function jpegMayExceed(bytes: Uint8Array): boolean {
  for (const { marker, start } of jpegSegments(bytes)) {
    const isFirst = spells(bytes, start + 2, 'ICC_PROFILE\0') && byteAt(bytes, start + 14) === 1;
    if (marker === 0xe2 && isFirst) return isOtherRgbProfile(bytes, start + 16);
  }
  return false;
}

/** Numbers of the primaries of sRGB, and of none told (ITU-T H.273, table 2). */
const plainPrimaries = [1, 2];

/**
 * A PNG's profile is packed and not looked into: all count but one named sRGB. The chunk cICP
 * has the last word: it tells primaries by number (PNG, third edition, 11.3.2).
 */
function pngMayExceed(bytes: Uint8Array): boolean {
  let profile = false;
  for (const { name, data } of pngChunks(bytes)) {
    if (name === 'IDAT') break;
    if (name === 'cICP') return !plainPrimaries.includes(byteAt(bytes, data));
    if (name === 'iCCP') profile = !spells(bytes, data, 'sRGB');
  }
  return profile;
}

/** The chunk ICCP of an extended WebP (RFC 9649). */
function webpMayExceed(bytes: Uint8Array): boolean {
  for (let offset = 12; offset + 8 <= bytes.length; ) {
    const length = littleFour(bytes, offset + 4);
    if (spells(bytes, offset, 'ICCP')) return isOtherRgbProfile(bytes, offset + 8);
    offset += 8 + length + (length % 2);
  }
  return false;
}

const holders = ['meta', 'iprp', 'ipco'];

/** The boxes colr of AVIF and HEIC (ISO/IEC 23008-12): primaries by number, or a profile. */
function heifMayExceed(bytes: Uint8Array, from: number, end: number): boolean {
  for (let offset = from; offset + 8 <= end; ) {
    const size = bigFour(bytes, offset);
    if (size !== 0 && size < 8) return false;
    const stop = size === 0 ? end : Math.min(end, offset + size);
    const holder = holders.find((name) => spells(bytes, offset + 4, name));
    if (holder && heifMayExceed(bytes, offset + (holder === 'meta' ? 12 : 8), stop)) return true;
    if (spells(bytes, offset + 4, 'colr')) {
      const numbered = spells(bytes, offset + 8, 'nclx');
      if (numbered && !plainPrimaries.includes(bigPair(bytes, offset + 12))) return true;
      if (!numbered && isOtherRgbProfile(bytes, offset + 12)) return true;
    }
    offset = stop;
  }
  return false;
}

/**
 * Whether a photo's bytes tell of primaries other than those of sRGB, so that its colours may lie
 * beyond it. False for bytes that are no picture or tell nothing. Never throws.
 */
export function mayExceedSrgb(bytes: Uint8Array): boolean {
  if (bigPair(bytes, 0) === 0xffd8) return jpegMayExceed(bytes);
  if (spells(bytes, 1, 'PNG\r\n')) return pngMayExceed(bytes);
  if (spells(bytes, 0, 'RIFF') && spells(bytes, 8, 'WEBP')) return webpMayExceed(bytes);
  return spells(bytes, 4, 'ftyp') && heifMayExceed(bytes, 0, bytes.length);
}

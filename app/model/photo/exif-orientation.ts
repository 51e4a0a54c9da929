import { bigFour, bigPair, littleFour, littlePair, spells } from './byte-fields.ts';

const orientationTag = 0x0112;

/**
 * EXIF orientation 1..8 of a TIFF block that starts at `start` and ends before `end`; 1 where it is
 * absent, out of range or the block is broken. Source: CIPA DC-008 (EXIF 2.32), TIFF 6.0.
 */
export function exifOrientation(bytes: Uint8Array, start: number, end: number): number {
  const little = spells(bytes, start, 'II');
  if (!little && !spells(bytes, start, 'MM')) return 1;
  const pair = little ? littlePair : bigPair;
  const four = little ? littleFour : bigFour;
  const directory = start + four(bytes, start + 4);
  if (directory + 2 > end) return 1;
  const count = Math.min(pair(bytes, directory), Math.floor((end - directory - 2) / 12));
  for (let i = 0; i < count; i++) {
    const entry = directory + 2 + i * 12;
    if (pair(bytes, entry) !== orientationTag) continue;
    const value = pair(bytes, entry + 8);
    return value >= 1 && value <= 8 ? value : 1;
  }
  return 1;
}

import { jpegSegments } from '../../core/reference/jpeg-segments.ts';
import {
  bigFour,
  bigPair,
  byteAt,
  isFrame,
  type PhotoHeader,
  spells,
} from '../../core/reference/photo-header.ts';
import { pngChunks } from '../../core/reference/png-chunks.ts';

const asSrgb = 'Save it as a plain JPEG or PNG in sRGB and give that.';

/** What a PNG's gAMA says of a picture in sRGB, times 100,000 (PNG Third Edition, W3C 2025, 11.3.2.2). */
const srgbGamma = 45_455;
const nearGamma = 500;

/** A gamma of its own counts where neither profile nor sRGB says better (11.3.2: their precedence). */
function pngProblem(bytes: Uint8Array): string | null {
  const chunks = new Map<string, number>();
  for (const { name, data } of pngChunks(bytes)) if (!chunks.has(name)) chunks.set(name, data);
  if (chunks.has('acTL')) return `This is a moving picture. ${asSrgb}`;
  if (chunks.has('cICP')) return `This PNG says by a code which colours it holds (cICP). ${asSrgb}`;
  const gamma = chunks.get('gAMA');
  const better = chunks.has('iCCP') || chunks.has('sRGB');
  if (gamma === undefined || better) return null;
  if (Math.abs(bigFour(bytes, gamma) - srgbGamma) <= nearGamma) return null;
  return `This PNG has a brightness of its own (gAMA). ${asSrgb}`;
}

/** Four components in the frame of a JPEG are inks (ITU-T T.81, B.2.2). */
function isInks(bytes: Uint8Array): boolean {
  for (const { marker, start } of jpegSegments(bytes))
    if (isFrame(marker)) return byteAt(bytes, start + 7) === 4;
  return false;
}

/** Transfers of high dynamic range: 16 is PQ, 18 is HLG (ITU-T H.273, table 3). */
const highRange = [16, 18];

/** Where an AVIF says by a colour box of codes that it is brighter than a screen (ISO/IEC 14496-12, 12.1.5). */
function isHighRange(bytes: Uint8Array): boolean {
  const end = Math.min(bytes.length, 65_536); // the boxes before the picture
  for (let offset = 4; offset < end; offset++)
    if (spells(bytes, offset, 'colrnclx')) return highRange.includes(bigPair(bytes, offset + 10));
  return false;
}

/**
 * Why this command would read a photo otherwise than the app does: a sentence, or null where both read
 * it alike. `turn` is the EXIF orientation its own decoder finds.
 */
export function unlikeTheApp(bytes: Uint8Array, header: PhotoHeader, turn: number): string | null {
  if (header.kind === 'bmp') return `This command can't read BMP. ${asSrgb}`;
  if (header.kind === 'png') return pngProblem(bytes);
  if (header.kind === 'jpeg' && isInks(bytes))
    return `This photo is in printing inks (CMYK). ${asSrgb}`;
  if (header.kind === 'avif' && isHighRange(bytes))
    return `This photo has a high dynamic range (HDR). ${asSrgb}`;
  // Browsers leave it as it lies.
  if (header.kind === 'webp' && turn > 1)
    return `This WebP is turned by a tag that browsers pass over. ${asSrgb}`;
  return null;
}

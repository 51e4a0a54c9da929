import { bmpHeader } from './photo/bmp-header.ts';
import { gifHeader } from './photo/gif-header.ts';
import type { PhotoHeader } from './photo/header-fields.ts';
import { heifHeader } from './photo/heif-header.ts';
import { jpegHeader } from './photo/jpeg-header.ts';
import { pngHeader } from './photo/png-header.ts';
import { webpHeader } from './photo/webp-header.ts';
import type { PixelSize } from './pixel-size.ts';

const formats = [jpegHeader, pngHeader, webpHeader, gifHeader, heifHeader, bmpHeader];

/** What the bytes of a whole file say; null where they are no picture this app knows. Never throws. */
export function photoHeader(bytes: Uint8Array): PhotoHeader | null {
  for (const format of formats) {
    const header = format(bytes);
    if (header) return header;
  }
  return null;
}

/** Size in px once the photo stands upright. */
export const uprightSize = (header: PhotoHeader): PixelSize =>
  header.orientation >= 5
    ? { width: header.height, height: header.width }
    : { width: header.width, height: header.height };

import type { CutOut } from '../../app/model/cut-out.ts';
import { knownColours, type Trust, trustIn } from './known-colours.ts';
import { photoError } from './photo-error.ts';

export interface Strip {
  /** RGBA bytes, opaque, row by row. */
  readonly rgba: Uint8ClampedArray;
  readonly trust: Trust;
}

export interface StripCanvas {
  /** Rows a strip can hold at most. */
  readonly rows: number;
  /** Draws rows [from, from + rows) of the cut-out and reads them back. */
  read(from: number, rows: number): Strip;
}

/**
 * A canvas that shows some rows of a cut-out at the bitmap's own scale, on white: what is
 * transparent or outside the photo is paper. Its first row carries the known colours.
 */
export function stripCanvas(bitmap: ImageBitmap, cut: CutOut, areaPx: number): StripCanvas {
  const width = Math.max(cut.width, knownColours.length);
  const rows = Math.max(1, Math.min(cut.height, Math.floor(areaPx / width) - 1));
  const canvas = new OffscreenCanvas(width, rows + 1);
  const context = canvas.getContext('2d', {
    alpha: false,
    colorSpace: 'srgb',
    willReadFrequently: true,
  });
  if (!context)
    throw photoError(
      'The picture could not be read: memory is short. Close other tabs and try again.',
    );
  context.imageSmoothingEnabled = !cut.whole;
  const [a, b, c, d, e, f] = cut.matrix;
  return {
    rows,
    read(from, count) {
      context.setTransform(1, 0, 0, 1, 0, 0);
      context.fillStyle = '#fff';
      context.fillRect(0, 0, width, rows + 1);
      context.setTransform(a, b, c, d, e, f + 1 - from);
      context.drawImage(bitmap, 0, 0);
      context.setTransform(1, 0, 0, 1, 0, 0);
      knownColours.forEach((colour, cell) => {
        context.fillStyle = `rgb(${colour.join(' ')})`;
        context.fillRect(cell, 0, 1, 1);
      });
      const known = context.getImageData(0, 0, knownColours.length, 1).data;
      return { rgba: context.getImageData(0, 1, cut.width, count).data, trust: trustIn(known) };
    },
  };
}

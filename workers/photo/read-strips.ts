import type { CutOut } from '../../app/model/cut-out.ts';
import { photoError } from './photo-error.ts';
import { stripCanvas } from './strip-canvas.ts';

/** Canvas area of a strip, px: small enough to let a cancel in between every few milliseconds. */
const stripAreaPx = 1_048_576;
const smallStripAreaPx = 65_536;

const untrue =
  "This browser hands out changed pixels (a protection against tracking), so the values of the picture can't be read. Allow this page to read pictures, or open it in another browser.";

export interface StripSink {
  /** Takes the next rows of the cut-out: RGBA bytes, opaque. */
  take(rgba: Uint8ClampedArray, rows: number): void;
  /** Between strips: part 0..1 read. Throws to stop. */
  pause(part: number): Promise<void>;
}

/**
 * Reads a cut-out from top to bottom. An empty or falsified strip is tried once more on a smaller
 * canvas, for short memory gives empty ones. Answers whether the pixels were slightly changed.
 * Errors: `PhotoError` where they are not to be trusted at all.
 */
export async function readStrips(
  bitmap: ImageBitmap,
  cut: CutOut,
  sink: StripSink,
): Promise<{ shaky: boolean }> {
  let canvas = stripCanvas(bitmap, cut, stripAreaPx);
  let small = false;
  let shaky = false;
  for (let row = 0; row < cut.height; ) {
    const rows = Math.min(canvas.rows, cut.height - row);
    const strip = canvas.read(row, rows);
    if (strip.trust === 'false') {
      if (small) throw photoError(untrue);
      small = true;
      canvas = stripCanvas(bitmap, cut, smallStripAreaPx);
      continue;
    }
    if (strip.trust === 'shaky') shaky = true;
    sink.take(strip.rgba, rows);
    row += rows;
    await sink.pause(row / cut.height);
  }
  return { shaky };
}

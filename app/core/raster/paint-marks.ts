import { type Lab, linearOfLab } from '../colour/lab.ts';
import { codeOfLinear } from '../colour/srgb.ts';
import type { PixelSize } from './size.ts';

/** Small shapes on a grid of square cells. */
export interface MarkGrid {
  /** Side of a cell, px of the picture; may be a fraction. */
  readonly cellPx: number;
  /** Each in lines, 3 numbers: row, first cell, one past the last. */
  readonly shapes: readonly { readonly lines: readonly number[] }[];
}

/** One of the shapes in a colour. */
interface PaintedShape {
  readonly shape: number;
  readonly lab: Lab;
}

/** The same shapes on the picture made smaller. */
export const scaledMarks = (grid: MarkGrid, scale: number): MarkGrid => ({
  ...grid,
  cellPx: grid.cellPx * scale,
});

/** How much of pixel `n` lies between two places of its side, 0..1. */
const overlap = (n: number, from: number, to: number): number =>
  Math.max(0, Math.min(n + 1, to) - Math.max(n, from));

/** Where a shape lies in a picture of that size, px, one past the last, with a cell or a pixel of margin. */
function boundsOf(lines: readonly number[], cellPx: number, { width, height }: PixelSize) {
  let [left, top, right, bottom] = [width, height, 0, 0];
  for (let n = 0; n < lines.length; n += 3) {
    left = Math.min(left, lines[n + 1] * cellPx);
    right = Math.max(right, lines[n + 2] * cellPx);
    top = Math.min(top, lines[n] * cellPx);
    bottom = Math.max(bottom, (lines[n] + 1) * cellPx);
  }
  const margin = Math.max(1, cellPx);
  return {
    left: Math.max(0, Math.floor(left - margin)),
    top: Math.max(0, Math.floor(top - margin)),
    right: Math.min(width, Math.ceil(right + margin)),
    bottom: Math.min(height, Math.ceil(bottom + margin)),
  };
}

/** Calls back with every pixel a shape covers and how much of it, 0..1; its cells are rounded off, as a brush would. */
export function eachMarkPixel(
  { cellPx, shapes }: MarkGrid,
  shape: number,
  size: PixelSize,
  found: (pixel: number, share: number) => void,
): void {
  const lines = shapes[shape]?.lines ?? [];
  const { left, top, right, bottom } = boundsOf(lines, cellPx, size);
  const [width, height] = [right - left, bottom - top];
  if (width <= 0 || height <= 0) return;
  const covered = new Float32Array(width * height);
  for (let n = 0; n < lines.length; n += 3) {
    const [from, to] = [lines[n + 1] * cellPx, lines[n + 2] * cellPx];
    const [above, below] = [lines[n] * cellPx, (lines[n] + 1) * cellPx];
    for (let y = Math.floor(above); y < Math.min(bottom, below); y++) {
      const high = overlap(y, above, below);
      for (let x = Math.floor(from); x < Math.min(right, to); x++)
        covered[(y - top) * width + x - left] += high * overlap(x, from, to);
    }
  }
  const reach = Math.floor(cellPx / 2);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      let [sum, count] = [0, 0];
      for (let v = Math.max(0, y - reach); v <= Math.min(height - 1, y + reach); v++) {
        for (let u = Math.max(0, x - reach); u <= Math.min(width - 1, x + reach); u++) {
          sum += covered[v * width + u];
          count++;
        }
      }
      if (sum > 0) found((top + y) * size.width + left + x, Math.min(1, sum / count));
    }
  }
}

/** Paints marks over opaque RGBA bytes of that size, in their order. */
export function paintMarks(
  grid: MarkGrid,
  marks: readonly PaintedShape[],
  size: PixelSize,
  out: Uint8ClampedArray,
): void {
  for (const { shape, lab } of marks) {
    const rgb = linearOfLab(lab).map(codeOfLinear);
    eachMarkPixel(grid, shape, size, (pixel, share) => {
      for (let c = 0; c < 3; c++) {
        const i = 4 * pixel + c;
        out[i] = (1 - share) * out[i] + share * rgb[c];
      }
    });
  }
}

import type { ColourBytes } from './subject-planes.ts';

/** Mean colours of square cells. */
export interface ColourGrid extends ColourBytes {
  /** Side of a cell in px of the raster. */
  readonly cellPx: number;
}

/** Cells so large that the grid's long side is at most `longSide`. */
export function colourGrid(planes: ColourBytes, longSide: number): ColourGrid {
  const { width, height } = planes.size;
  const cellPx = Math.max(1, Math.ceil(Math.max(width, height) / longSide));
  const size = { width: Math.ceil(width / cellPx), height: Math.ceil(height / cellPx) };
  const cells = size.width * size.height;
  const lightness = new Uint8ClampedArray(cells);
  const a = new Int8Array(cells);
  const b = new Int8Array(cells);
  for (let cell = 0; cell < cells; cell++) {
    const left = (cell % size.width) * cellPx;
    const top = Math.floor(cell / size.width) * cellPx;
    const right = Math.min(width, left + cellPx);
    const bottom = Math.min(height, top + cellPx);
    let [l, u, v] = [0, 0, 0];
    for (let y = top; y < bottom; y++) {
      for (let i = y * width + left; i < y * width + right; i++) {
        l += planes.lightness[i] as number;
        u += planes.a[i] as number;
        v += planes.b[i] as number;
      }
    }
    const count = (right - left) * (bottom - top);
    lightness[cell] = l / count;
    a[cell] = Math.round(u / count);
    b[cell] = Math.round(v / count);
  }
  return { size, lightness, a, b, cellPx };
}

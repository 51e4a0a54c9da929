// What runs along rows and along columns is run along rows twice: each time the rows it wrote are turned into columns
// of the next plane, while they are at hand. Going down a plane is several times as dear as going along it.

/** So many rows are turned at a time: half a cache line of floats of every column. */
export const stripRows = 8;

/**
 * Writes a strip of rows, `width` samples each, as columns of `out`: the first of them is column `left`, and a row of
 * `out` holds `outWidth` samples.
 */
export function turnStrip(
  strip: Float32Array,
  rows: number,
  width: number,
  out: Float32Array,
  outWidth: number,
  left: number,
): void {
  if (rows !== stripRows) {
    for (let row = 0, at = 0; row < rows; row++) {
      for (let x = 0, to = left + row; x < width; x++, at++, to += outWidth) out[to] = strip[at];
    }
    return;
  }
  // Written out: a loop over eight takes twice as long.
  for (let x = 0, to = left; x < width; x++, to += outWidth) {
    out[to] = strip[x];
    out[to + 1] = strip[x + width];
    out[to + 2] = strip[x + 2 * width];
    out[to + 3] = strip[x + 3 * width];
    out[to + 4] = strip[x + 4 * width];
    out[to + 5] = strip[x + 5 * width];
    out[to + 6] = strip[x + 6 * width];
    out[to + 7] = strip[x + 7 * width];
  }
}

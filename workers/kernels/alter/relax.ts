import type { FillLevel } from './fill-level.ts';

/** More than 1: steps are taken a little too far, which settles wide areas sooner. */
const overshoot = 1.5;

/** Rows of the cells that are to be filled: first and last column, -1 where a row has none. */
export function gapsOf({ width, height, known }: FillLevel): Int32Array {
  const gaps = new Int32Array(2 * height).fill(-1);
  for (let y = 0; y < height; y++) {
    const row = known.subarray(y * width, (y + 1) * width);
    const first = row.indexOf(0);
    if (first < 0) continue;
    gaps[2 * y] = first;
    gaps[2 * y + 1] = row.lastIndexOf(0);
  }
  return gaps;
}

/**
 * One sweep over what is not known, every cell drawn towards the mean of its four neighbours: first the
 * cells of one colour of a chessboard, then the others (red-black successive over-relaxation; Young,
 * 'Iterative Solution of Large Linear Systems', 1971). At the border a cell stands in for its missing
 * neighbour, so nothing flows over it.
 */
export function relax(level: FillLevel, plane: Float32Array, gaps: Int32Array): void {
  for (const colour of [0, 1]) relaxHalf(level, plane, gaps, colour);
}

function relaxHalf(
  { width, height, known }: FillLevel,
  plane: Float32Array,
  gaps: Int32Array,
  colour: number,
): void {
  for (let y = 0; y < height; y++) {
    const first = gaps[2 * y] as number;
    if (first < 0) continue;
    const last = gaps[2 * y + 1] as number;
    const above = y > 0 ? -width : 0;
    const below = y < height - 1 ? width : 0;
    for (let x = first + ((first + y + colour) & 1); x <= last; x += 2) {
      const i = y * width + x;
      if (known[i] === 1) continue;
      const own = plane[i] as number;
      const mean =
        ((plane[x > 0 ? i - 1 : i] as number) +
          (plane[x < width - 1 ? i + 1 : i] as number) +
          (plane[i + above] as number) +
          (plane[i + below] as number)) /
        4;
      plane[i] = own + overshoot * (mean - own);
    }
  }
}

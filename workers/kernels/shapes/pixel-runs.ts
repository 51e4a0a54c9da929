import type { PixelSize } from '../../../app/model/pixel-size.ts';

/** A map as runs of pixels of one kind, row by row: far fewer than pixels. */
export interface PixelRuns {
  /** First pixel of every run, and the number of pixels at the end. */
  readonly starts: Int32Array;
  /** First run of every row, and the number of runs at the end. */
  readonly rows: Int32Array;
}

export function pixelRuns(map: Uint8Array, { width, height }: PixelSize): PixelRuns {
  const rows = new Int32Array(height + 1);
  let count = 0;
  for (let y = 0, i = 0; y < height; y++) {
    rows[y] = count++;
    let before = map[i];
    for (const end = i++ + width; i < end; i++) {
      const kind = map[i];
      if (kind !== before) count++;
      before = kind;
    }
  }
  rows[height] = count;
  const starts = new Int32Array(count + 1);
  let run = 0;
  for (let y = 0, i = 0; y < height; y++) {
    starts[run++] = i;
    let before = map[i];
    for (const end = i++ + width; i < end; i++) {
      const kind = map[i];
      if (kind !== before) starts[run++] = i;
      before = kind;
    }
  }
  starts[count] = map.length;
  return { starts, rows };
}

/** Every two runs of neighbouring rows that share pixel sides, and how many; from top to bottom. */
export interface Meetings {
  readonly count: number;
  readonly uppers: Int32Array;
  readonly lowers: Int32Array;
  readonly sides: Int32Array;
}

export function meetingsOf({ starts, rows }: PixelRuns, { width, height }: PixelSize): Meetings {
  // Walking down a pair of rows every step ends a run of one of them.
  const most = 2 * (starts.length - 1);
  const uppers = new Int32Array(most);
  const lowers = new Int32Array(most);
  const sides = new Int32Array(most);
  let count = 0;
  for (let y = 1; y < height; y++) {
    const below = rows[y] as number;
    const end = rows[y + 1] as number;
    let upper = rows[y - 1] as number;
    let lower = below;
    let from = starts[lower] as number;
    while (upper < below && lower < end) {
      const upperEnd = (starts[upper + 1] as number) + width;
      const lowerEnd = starts[lower + 1] as number;
      const to = Math.min(upperEnd, lowerEnd);
      uppers[count] = upper;
      lowers[count] = lower;
      sides[count++] = to - from;
      from = to;
      if (upperEnd === to) upper++;
      if (lowerEnd === to) lower++;
    }
  }
  return { count, uppers, lowers, sides };
}

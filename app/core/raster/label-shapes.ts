import type { PixelSize } from './size.ts';

/** A map as runs of pixels of one kind, row by row: far fewer than pixels. */
interface PixelRuns {
  /** First pixel of every run, and the number of pixels at the end. */
  readonly starts: Int32Array;
  /** First run of every row, and the number of runs at the end. */
  readonly rows: Int32Array;
}

function findRuns(map: Uint8Array, { width, height }: PixelSize): PixelRuns {
  const rows = new Int32Array(height + 1);
  // Every pixel may begin a run; few do.
  let starts = new Int32Array((map.length >> 4) + width + 1);
  let count = 0;
  for (let y = 0, i = 0; y < height; y++) {
    if (starts.length - count <= width) starts = lengthened(starts);
    rows[y] = count;
    starts[count++] = i;
    let before = map[i];
    for (const end = i++ + width; i < end; i++) {
      const kind = map[i];
      if (kind !== before) starts[count++] = i;
      before = kind;
    }
  }
  rows[height] = count;
  starts[count] = map.length;
  return { starts: starts.subarray(0, count + 1), rows };
}

/** The same list with as much room again. */
function lengthened(list: Int32Array<ArrayBuffer>): Int32Array<ArrayBuffer> {
  const longer = new Int32Array(2 * list.length);
  longer.set(list);
  return longer;
}

/** Every pair of runs in neighbouring rows that touch, from top to bottom. */
interface Meetings {
  readonly count: number;
  readonly uppers: Int32Array;
  readonly lowers: Int32Array;
  /** How many pixel sides the two share. */
  readonly sides: Int32Array;
}

function findMeetings({ starts, rows }: PixelRuns, { width, height }: PixelSize): Meetings {
  // Every step along a pair of rows ends a run of one of them, and every run lies in two pairs.
  const room = 2 * (starts.length - 1);
  const uppers = new Int32Array(room);
  const lowers = new Int32Array(room);
  const sides = new Int32Array(room);
  let count = 0;
  for (let y = 1; y < height; y++) {
    const below = rows[y];
    const end = rows[y + 1];
    let upper = rows[y - 1];
    let lower = below;
    let from = starts[lower];
    while (upper < below && lower < end) {
      const upperEnd = starts[upper + 1] + width;
      const lowerEnd = starts[lower + 1];
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

/** The connected shapes of a map by runs. A shape is connected through the four sides of its pixels. */
export interface RunLabels {
  readonly runs: PixelRuns;
  readonly meetings: Meetings;
  /** Shape of every run; shapes are numbered from 0 in the order in which the picture is read. */
  readonly shapes: Int32Array;
  /** By shape: what the map holds there. */
  readonly kinds: Uint8Array;
  readonly areasPx: Int32Array;
}

/** Finds the first run known to belong to the shape of `run`, and halves the path to it. */
function findRoot(parents: Int32Array, run: number): number {
  let root = run;
  let parent = parents[root];
  while (parent !== root) {
    const above = parents[parent];
    parents[root] = above;
    root = above;
    parent = parents[root];
  }
  return root;
}

/**
 * Labels the connected shapes of a map that holds a kind for every pixel, row by row (union of runs;
 * common practice). Hands back control now and then.
 */
export function* labelRuns(map: Uint8Array, size: PixelSize): Generator<void, RunLabels> {
  const runs = findRuns(map, size);
  yield;
  const { starts } = runs;
  const runCount = starts.length - 1;
  const parents = new Int32Array(runCount);
  for (let run = 0; run < runCount; run++) parents[run] = run;
  const meetings = findMeetings(runs, size);
  yield;
  const { uppers, lowers } = meetings;
  for (let n = 0; n < meetings.count; n++) {
    const upper = uppers[n];
    const lower = lowers[n];
    if (map[starts[upper]] !== map[starts[lower]]) continue;
    const one = findRoot(parents, upper);
    const other = findRoot(parents, lower);
    if (one < other) parents[other] = one;
    else if (other < one) parents[one] = other;
  }
  yield;
  let count = 0;
  // A shape's first run is its own parent, and a parent comes before its runs: it has its number already.
  for (let run = 0; run < runCount; run++) {
    const parent = parents[run];
    parents[run] = parent === run ? count++ : parents[parent];
  }
  const kinds = new Uint8Array(count);
  const areasPx = new Int32Array(count);
  for (let run = 0; run < runCount; run++) {
    const shape = parents[run];
    const start = starts[run];
    kinds[shape] = map[start];
    areasPx[shape] = areasPx[shape] + starts[run + 1] - start;
  }
  return { runs, meetings, shapes: parents, kinds, areasPx };
}

/** The shape of every pixel, row by row. */
export function labelPixels({ runs: { starts }, shapes }: RunLabels): Int32Array {
  const labels = new Int32Array(starts[shapes.length]);
  for (let run = 0; run < shapes.length; run++) {
    labels.fill(shapes[run], starts[run], starts[run + 1]);
  }
  return labels;
}

/** The shape that a pixel belongs to. */
export function shapeAt({ runs, shapes }: RunLabels, { width }: PixelSize, pixel: number): number {
  const { starts, rows } = runs;
  const y = Math.floor(pixel / width);
  let low = rows[y];
  let high = rows[y + 1] - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (starts[middle] <= pixel) low = middle;
    else high = middle - 1;
  }
  return shapes[low];
}

/** A mask of one shape alone: 1 for its pixels, of `pixels` in all. */
export function maskOfShape(
  { runs: { starts }, shapes }: RunLabels,
  shape: number,
  pixels: number,
): Uint8Array {
  const mask = new Uint8Array(pixels);
  for (let run = 0; run < shapes.length; run++) {
    if (shapes[run] === shape) mask.fill(1, starts[run], starts[run + 1]);
  }
  return mask;
}

/** The first pixel of every shape in the order in which the picture is read. */
export function firstPixels({ runs: { starts }, shapes, kinds }: RunLabels): Int32Array {
  const pixels = new Int32Array(kinds.length);
  for (let run = shapes.length - 1; run >= 0; run--) pixels[shapes[run]] = starts[run];
  return pixels;
}

/**
 * Length of every shape's outline, px: its pixel sides times pi / 4, which is right on average over all
 * directions. Holes have an outline too, and the picture's own border counts as outline.
 */
export function measureOutlines({ runs, meetings, shapes, kinds }: RunLabels): Float64Array {
  const { starts } = runs;
  const { count, uppers, lowers, sides: shared } = meetings;
  const sides = new Int32Array(kinds.length);
  for (let run = 0; run < shapes.length; run++) {
    const shape = shapes[run];
    sides[shape] = sides[shape] + 2 + 2 * (starts[run + 1] - starts[run]);
  }
  // Where two runs of one shape touch, neither has an outline.
  for (let n = 0; n < count; n++) {
    const shape = shapes[uppers[n]];
    if (shape === shapes[lowers[n]]) sides[shape] = sides[shape] - 2 * shared[n];
  }
  return Float64Array.from(sides, (side) => (side * Math.PI) / 4);
}

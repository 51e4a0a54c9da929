import type { PixelSize } from './size.ts';

/** A map as runs of pixels of one kind, row by row: far fewer than pixels. */
interface PixelRuns {
  /** First pixel of every run, and the number of pixels at the end. */
  readonly starts: Int32Array;
  /** First run of every row, and the number of runs at the end. */
  readonly rows: Int32Array;
}

function pixelRuns(map: Uint8Array, { width, height }: PixelSize): PixelRuns {
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
interface Meetings {
  readonly count: number;
  readonly uppers: Int32Array;
  readonly lowers: Int32Array;
  readonly sides: Int32Array;
}

function meetingsOf({ starts, rows }: PixelRuns, { width, height }: PixelSize): Meetings {
  // Walking down a pair of rows every step ends a run of one of them.
  const most = 2 * (starts.length - 1);
  const uppers = new Int32Array(most);
  const lowers = new Int32Array(most);
  const sides = new Int32Array(most);
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

/** Connected shapes of a map, by runs: the shape of every run, and kind and size of each shape. */
export interface RunLabels {
  readonly runs: PixelRuns;
  readonly meetings: Meetings;
  /** Shape of every run, counted from 0 in the order the picture is read. */
  readonly shapes: Int32Array;
  readonly kinds: Uint8Array;
  readonly areasPx: Int32Array;
}

/** The same with every pixel's shape. */
interface Labels {
  readonly labels: Int32Array;
  readonly kinds: Uint8Array;
  readonly areasPx: Int32Array;
}

/** The first run of i's shape so far; halves the way for whoever asks next. */
function first(parents: Int32Array, i: number): number {
  let at = i;
  let parent = parents[at];
  while (parent !== at) {
    const above = parents[parent];
    parents[at] = above;
    at = above;
    parent = parents[at];
  }
  return at;
}

/** Connected shapes (by the four sides) of runs of one kind. Hands back control now and then. */
export function* labelRuns(map: Uint8Array, size: PixelSize): Generator<void, RunLabels> {
  const runs = pixelRuns(map, size);
  yield;
  const { starts } = runs;
  const runCount = starts.length - 1;
  const parents = new Int32Array(runCount);
  for (let run = 0; run < runCount; run++) parents[run] = run;
  const meetings = meetingsOf(runs, size);
  yield;
  const { uppers, lowers } = meetings;
  for (let n = 0; n < meetings.count; n++) {
    const upper = uppers[n];
    const lower = lowers[n];
    if (map[starts[upper]] !== map[starts[lower]]) continue;
    const one = first(parents, upper);
    const other = first(parents, lower);
    if (one < other) parents[other] = one;
    else if (other < one) parents[one] = other;
  }
  yield;
  let count = 0;
  // A shape's first run points at itself; a parent comes before its runs, so it is numbered already.
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

/** Connected shapes (by the four sides) of pixels of one kind. Hands back control now and then. */
export function* labelShapes(map: Uint8Array, size: PixelSize): Generator<void, Labels> {
  const { runs, shapes, kinds, areasPx } = yield* labelRuns(map, size);
  const { starts } = runs;
  const labels = new Int32Array(map.length);
  for (let run = 0; run < shapes.length; run++) {
    labels.fill(shapes[run], starts[run], starts[run + 1]);
  }
  return { labels, kinds, areasPx };
}

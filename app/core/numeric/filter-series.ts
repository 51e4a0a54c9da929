/** Sorts values[0 .. count - 1] rising: for some ten numbers quicker than to call the sort of typed arrays. */
export function insertionSort(values: Float64Array, count: number): void {
  for (let k = 1; k < count; k++) {
    const own = values[k];
    let to = k;
    for (; to > 0 && values[to - 1] > own; to--) values[to] = values[to - 1];
    values[to] = own;
  }
}

const span = 5;

/** Median of each value and its two neighbours to either side; of closed rows round the end. */
export function runningMedian(values: Float32Array, closed: boolean): Float32Array {
  const count = values.length;
  const half = span >> 1;
  const window = new Float64Array(span);
  const medians = new Float32Array(count);
  for (let i = 0; i < count; i++) {
    const reach = closed ? Math.min(half, (count - 1) >> 1) : Math.min(half, i, count - 1 - i);
    const size = 2 * reach + 1;
    for (let k = 0; k < size; k++) window[k] = values[(i + k - reach + count) % count];
    insertionSort(window, size);
    medians[i] = window[reach];
  }
  return medians;
}

/**
 * Whether values along a contour lie above a limit, with hysteresis: those within `slack` of it go
 * with the nearest that is clear of it, by their own place where none is or two differ at the same
 * way. The same in both directions.
 */
export function thresholdWithHysteresis(
  values: Float32Array,
  limit: number,
  slack: number,
  closed: boolean,
): Uint8Array {
  const count = values.length;
  const clear = (i: number): -1 | 0 | 1 => {
    const value = values[i];
    return value >= limit + slack ? 1 : value < limit - slack ? -1 : 0;
  };
  const before = nearest(count, closed, clear, 1);
  const after = nearest(count, closed, clear, -1);
  const settled = new Uint8Array(count);
  for (let i = 0; i < count; i++) {
    const back = before.ways[i];
    const on = after.ways[i];
    const sides = before.sides[i] + after.sides[i];
    const side = back < on ? before.sides[i] : on < back ? after.sides[i] : sides;
    settled[i] = side ? (side > 0 ? 1 : 0) : values[i] >= limit ? 1 : 0;
  }
  return settled;
}

/** For each place the way to the nearest clear one against the step's direction, and its side. */
function nearest(count: number, closed: boolean, clear: (i: number) => -1 | 0 | 1, step: 1 | -1) {
  const ways = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  const sides = new Int8Array(count);
  const start = step > 0 ? 0 : count - 1;
  let way = Number.POSITIVE_INFINITY;
  let side: -1 | 0 | 1 = 0;
  // Twice round where the contour is closed.
  for (let n = 0; n < (closed ? 2 : 1) * count; n++) {
    const i = (((start + step * n) % count) + count) % count;
    const own = clear(i);
    way = own === 0 ? way + 1 : 0;
    if (own !== 0) side = own;
    ways[i] = way;
    sides[i] = side;
  }
  return { ways, sides };
}

/** Sorts values[0 .. count - 1] rising; for about ten numbers quicker than the sort of typed arrays. */
export function insertionSort(values: Float64Array, count: number): void {
  for (let k = 1; k < count; k++) {
    const own = values[k];
    let to = k;
    for (; to > 0 && values[to - 1] > own; to--) values[to] = values[to - 1];
    values[to] = own;
  }
}

/**
 * Brings the value that would be number n of the first `count`, were they sorted, to its place: none before it is
 * larger, none behind it smaller (Hoare, 'Algorithm 65: Find', 1961). No value may be NaN.
 */
export function selectNth(values: Float64Array, count: number, n: number): void {
  let first = 0;
  let last = count - 1;
  while (first < last) {
    const middle = values[(first + last) >> 1];
    let i = first;
    let j = last;
    while (i <= j) {
      while (values[i] < middle) i++;
      while (values[j] > middle) j--;
      if (i > j) break;
      const value = values[i];
      values[i++] = values[j];
      values[j--] = value;
    }
    if (n <= j) last = j;
    else if (n >= i) first = i;
    else return;
  }
}

/**
 * Writes the mean of each value and its `half` neighbours to either side into `means`; of closed rows
 * round the end. Towards open ends the box shrinks evenly, so that these stay where they are.
 */
export function boxMeans<T extends Float32Array | Float64Array>(
  values: T,
  half: number,
  closed: boolean,
  means: T,
): T {
  const count = values.length;
  for (let i = 0; i < count; i++) {
    const reach = closed ? Math.min(half, (count - 1) >> 1) : Math.min(half, i, count - 1 - i);
    let sum = 0;
    for (let k = i - reach; k <= i + reach; k++) {
      sum += values[k < 0 ? k + count : k < count ? k : k - count];
    }
    means[i] = sum / (2 * reach + 1);
  }
  return means;
}

const medianSpan = 5;

/** Median of each value and its two neighbours to either side; of closed rows round the end. */
export function runningMedian(values: Float32Array, closed: boolean): Float32Array {
  const count = values.length;
  const half = medianSpan >> 1;
  const window = new Float64Array(medianSpan);
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
 * Threshold with hysteresis along a row: 1 above `limit`, 0 below. Values within `slack` of it take the
 * side of the nearest value that is clear of it; where there is none, or two of them are equally near and
 * differ, the plain threshold decides. The result does not depend on the direction of the row.
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
  const before = nearestClear(count, closed, clear, 1);
  const after = nearestClear(count, closed, clear, -1);
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

/** For each value how far back against `step` the nearest clear one lies, and which side it is on. */
function nearestClear(
  count: number,
  closed: boolean,
  clear: (i: number) => -1 | 0 | 1,
  step: 1 | -1,
) {
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

import { sortFew } from './sort-few.ts';

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
    for (let k = 0; k < size; k++) window[k] = values[(i + k - reach + count) % count] as number;
    sortFew(window, size);
    medians[i] = window[reach] as number;
  }
  return medians;
}

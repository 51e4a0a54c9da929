const span = 5;

/** Median of each value and its two neighbours to either side; of closed rows round the end. */
export function runningMedian(values: Float32Array, closed: boolean): Float32Array {
  const count = values.length;
  const half = span >> 1;
  const window = new Float64Array(span);
  return Float32Array.from(values, (_, i) => {
    const reach = closed ? Math.min(half, (count - 1) >> 1) : Math.min(half, i, count - 1 - i);
    const size = 2 * reach + 1;
    for (let k = 0; k < size; k++) window[k] = values[(i + k - reach + count) % count] as number;
    return window.subarray(0, size).sort()[reach] as number;
  });
}

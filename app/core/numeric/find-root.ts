const near = 1e-9;

/**
 * Where a function that falls from above zero at `low` to below it at `high` crosses zero: false
 * position with the Illinois rule, M. Dowell and P. Jarratt 1971 (from memory). Never leaves
 * [low, high]; answers the end that is nearer where the function does not cross.
 */
export function findRoot(f: (x: number) => number, low: number, high: number): number {
  let fLow = f(low);
  let fHigh = f(high);
  if (!(fLow > 0)) return low;
  if (!(fHigh < 0)) return high;
  let side = 0;
  for (let turn = 0; turn < 120 && high - low > near; turn++) {
    // Halving in between keeps a steep function from creeping.
    const middle = (low + high) / 2;
    const x = turn % 3 === 2 ? middle : (low * fHigh - high * fLow) / (fHigh - fLow);
    const fx = f(x);
    if (Math.abs(fx) < near) return x;
    if (fx > 0) {
      low = x;
      fLow = fx;
      if (side === 1) fHigh /= 2;
      side = 1;
    } else {
      high = x;
      fHigh = fx;
      if (side === -1) fLow /= 2;
      side = -1;
    }
  }
  return (low + high) / 2;
}

/** By then the ends of any interval are neighbours among the numbers of 64 bits. */
const mostHalvings = 60;

/**
 * Where a condition that holds at `low` and not at `high` ceases to hold, by halving: the ends of the
 * interval that is left, at most `width(high)` wide, or after 60 halvings.
 */
export function bisect(
  holds: (x: number) => boolean,
  low: number,
  high: number,
  width: (high: number) => number,
): readonly [number, number] {
  for (let n = 0; n < mostHalvings && high - low > width(high); n++) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return [low, high];
}

const near = 1e-9;

/**
 * Where a function that falls from above zero at `low` to below it at `high` crosses zero: false
 * position with the Illinois rule, M. Dowell and P. Jarratt 1971 (from memory). Never leaves
 * [low, high]; answers the end that is nearer where the function does not cross.
 */
export function findRoot(of: (x: number) => number, low: number, high: number): number {
  let atLow = of(low);
  let atHigh = of(high);
  if (!(atLow > 0)) return low;
  if (!(atHigh < 0)) return high;
  let side = 0;
  for (let turn = 0; turn < 120 && high - low > near; turn++) {
    // Halving in between keeps a steep function from creeping.
    const middle = (low + high) / 2;
    const x = turn % 3 === 2 ? middle : (low * atHigh - high * atLow) / (atHigh - atLow);
    const at = of(x);
    if (Math.abs(at) < near) return x;
    if (at > 0) {
      low = x;
      atLow = at;
      if (side === 1) atHigh /= 2;
      side = 1;
    } else {
      high = x;
      atHigh = at;
      if (side === -1) atLow /= 2;
      side = -1;
    }
  }
  return (low + high) / 2;
}

/**
 * Solves a symmetric positive system of `size` unknowns in place (Cholesky): `matrix` row by row,
 * `right` becomes the solution. False where the matrix is not positive.
 */
export function solveLinear(matrix: Float64Array, right: Float64Array, size: number): boolean {
  for (let j = 0; j < size; j++) {
    for (let i = j; i < size; i++) {
      let sum = matrix[i * size + j];
      for (let k = 0; k < j; k++) {
        sum -= matrix[i * size + k] * matrix[j * size + k];
      }
      if (i > j) matrix[i * size + j] = sum / matrix[j * size + j];
      else if (sum > 0) matrix[j * size + j] = Math.sqrt(sum);
      else return false;
    }
  }
  for (let i = 0; i < size; i++) {
    let sum = right[i];
    for (let k = 0; k < i; k++) sum -= matrix[i * size + k] * right[k];
    right[i] = sum / matrix[i * size + i];
  }
  for (let i = size - 1; i >= 0; i--) {
    let sum = right[i];
    for (let k = i + 1; k < size; k++) {
      sum -= matrix[k * size + i] * right[k];
    }
    right[i] = sum / matrix[i * size + i];
  }
  return true;
}

/**
 * Solves any square system of `size` unknowns in place by elimination with the largest pivot of each
 * column: `matrix` row by row, `right` becomes the solution. False where the matrix has no inverse.
 */
export function solveSquare(matrix: Float64Array, right: Float64Array, size: number): boolean {
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let row = column + 1; row < size; row++) {
      const here = Math.abs(matrix[row * size + column]);
      if (here > Math.abs(matrix[pivot * size + column])) pivot = row;
    }
    const most = matrix[pivot * size + column];
    if (!(Math.abs(most) > 1e-300)) return false;
    if (pivot !== column) swapRows(matrix, right, size, pivot, column);
    for (let row = column + 1; row < size; row++) {
      const share = matrix[row * size + column] / most;
      if (share === 0) continue;
      for (let k = column; k < size; k++) {
        matrix[row * size + k] = matrix[row * size + k] - share * matrix[column * size + k];
      }
      right[row] = right[row] - share * right[column];
    }
  }
  for (let row = size - 1; row >= 0; row--) {
    let sum = right[row];
    for (let k = row + 1; k < size; k++) {
      sum -= matrix[row * size + k] * right[k];
    }
    right[row] = sum / matrix[row * size + row];
  }
  return true;
}

function swapRows(m: Float64Array, right: Float64Array, size: number, one: number, two: number) {
  for (let k = 0; k < size; k++) {
    const kept = m[one * size + k];
    m[one * size + k] = m[two * size + k];
    m[two * size + k] = kept;
  }
  const kept = right[one];
  right[one] = right[two];
  right[two] = kept;
}

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

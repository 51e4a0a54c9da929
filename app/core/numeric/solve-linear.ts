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

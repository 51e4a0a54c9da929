/**
 * Solves a symmetric positive system of `size` unknowns in place (Cholesky): `matrix` row by row,
 * `right` becomes the solution. False where the matrix is not positive.
 */
export function solveSmall(matrix: Float64Array, right: Float64Array, size: number): boolean {
  for (let j = 0; j < size; j++) {
    for (let i = j; i < size; i++) {
      let sum = matrix[i * size + j] as number;
      for (let k = 0; k < j; k++) {
        sum -= (matrix[i * size + k] as number) * (matrix[j * size + k] as number);
      }
      if (i > j) matrix[i * size + j] = sum / (matrix[j * size + j] as number);
      else if (sum > 0) matrix[j * size + j] = Math.sqrt(sum);
      else return false;
    }
  }
  for (let i = 0; i < size; i++) {
    let sum = right[i] as number;
    for (let k = 0; k < i; k++) sum -= (matrix[i * size + k] as number) * (right[k] as number);
    right[i] = sum / (matrix[i * size + i] as number);
  }
  for (let i = size - 1; i >= 0; i--) {
    let sum = right[i] as number;
    for (let k = i + 1; k < size; k++) {
      sum -= (matrix[k * size + i] as number) * (right[k] as number);
    }
    right[i] = sum / (matrix[i * size + i] as number);
  }
  return true;
}

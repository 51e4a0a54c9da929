/** Largest difference between two planes of one size. */
export function mostApart(one: Float32Array, other: Float32Array): number {
  let most = 0;
  for (let i = 0; i < one.length; i++) {
    most = Math.max(most, Math.abs((one[i] as number) - (other[i] as number)));
  }
  return most;
}

/** Sorts values[0 .. count - 1] rising: for some ten numbers quicker than to call the sort of typed arrays. */
export function sortFew(values: Float64Array, count: number): void {
  for (let k = 1; k < count; k++) {
    const own = values[k] as number;
    let to = k;
    for (; to > 0 && (values[to - 1] as number) > own; to--) values[to] = values[to - 1] as number;
    values[to] = own;
  }
}

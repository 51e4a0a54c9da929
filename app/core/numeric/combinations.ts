/** All sets of exactly `size` out of 0..count-1, each in rising order. */
export function combinations(count: number, size: number): number[][] {
  const found: number[][] = [];
  const grow = (set: number[], from: number): void => {
    if (set.length === size) {
      found.push(set);
      return;
    }
    for (let i = from; i <= count - (size - set.length); i++) grow([...set, i], i + 1);
  };
  grow([], 0);
  return found;
}

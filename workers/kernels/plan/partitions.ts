/**
 * All ways to put items 0..count-1 into at most `most` groups that are not empty, each group as bits.
 * For 6 items and 3 groups: 122.
 */
export function partitions(count: number, most: number): number[][] {
  const found: number[][] = [];
  const place = (item: number, groups: number[]): void => {
    if (item === count) {
      found.push(groups);
      return;
    }
    for (let g = 0; g < groups.length; g++) {
      place(
        item + 1,
        groups.map((bits, i) => (i === g ? bits | (1 << item) : bits)),
      );
    }
    if (groups.length < most) place(item + 1, [...groups, 1 << item]);
  };
  place(0, []);
  return found;
}

/** The items of a group given as bits. */
export const itemsOf = (bits: number): number[] =>
  Array.from({ length: 32 }, (_, i) => i).filter((i) => (bits >>> i) & 1);

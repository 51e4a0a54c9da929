import type { PixelSize } from '../../../app/model/reference.ts';

/**
 * For each shape that may be merged, the pixel sides it shares with others, as linked lists: two
 * lists are joined in one step when shapes become one.
 */
export interface NeighbourLists {
  /** First and last entry of a shape's list, -1 where it has none. */
  readonly heads: Int32Array;
  readonly tails: Int32Array;
  /** Per entry: the shape on the other side, and the next entry or -1. */
  readonly others: Int32Array;
  readonly nexts: Int32Array;
}

/** Calls `meet` for every pair of pixels side by side that lie in different shapes. */
function eachMeeting(
  labels: Int32Array,
  { width, height }: PixelSize,
  meet: (one: number, other: number) => void,
): void {
  for (let y = 0; y < height; y++) {
    for (let x = 0, i = y * width; x < width; x++, i++) {
      const label = labels[i] as number;
      if (x > 0 && labels[i - 1] !== label) meet(labels[i - 1] as number, label);
      if (y > 0 && labels[i - width] !== label) meet(labels[i - width] as number, label);
    }
  }
}

/** Lists for the shapes with `small[shape]` 1; the others' stay empty. */
export function neighbourLists(
  labels: Int32Array,
  small: Uint8Array,
  size: PixelSize,
): NeighbourLists {
  let entries = 0;
  eachMeeting(labels, size, (one, other) => {
    entries += (small[one] as number) + (small[other] as number);
  });
  const lists: NeighbourLists = {
    heads: new Int32Array(small.length).fill(-1),
    tails: new Int32Array(small.length).fill(-1),
    others: new Int32Array(entries),
    nexts: new Int32Array(entries),
  };
  const { heads, tails, others, nexts } = lists;
  let entry = 0;
  const add = (owner: number, other: number): void => {
    if (small[owner] === 0) return;
    others[entry] = other;
    nexts[entry] = heads[owner] as number;
    heads[owner] = entry;
    if (tails[owner] === -1) tails[owner] = entry;
    entry++;
  };
  eachMeeting(labels, size, (one, other) => {
    add(one, other);
    add(other, one);
  });
  return lists;
}

/** Appends the list of `from` to that of `to`. */
export function joinLists({ heads, tails, nexts }: NeighbourLists, from: number, to: number): void {
  const head = heads[from] as number;
  if (head === -1) return;
  const tail = tails[to] as number;
  if (tail === -1) heads[to] = head;
  else nexts[tail] = head;
  tails[to] = tails[from] as number;
  heads[from] = -1;
  tails[from] = -1;
}

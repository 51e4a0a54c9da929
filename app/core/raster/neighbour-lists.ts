import type { RunLabels } from './label-shapes.ts';

/**
 * For each shape that may be merged, the stretches of border it shares with others, as linked lists:
 * two lists are joined in one step when shapes become one.
 */
export interface NeighbourLists {
  /** First and last entry of a shape's list, -1 where it has none. */
  readonly heads: Int32Array;
  readonly tails: Int32Array;
  /** Per entry: the shape on the other side, pixel sides shared, and the next entry or -1. */
  readonly others: Int32Array;
  readonly sides: Int32Array;
  readonly nexts: Int32Array;
}

/** Lists being filled; places are taken in the order of adding. */
class Filling implements NeighbourLists {
  readonly heads: Int32Array;
  readonly tails: Int32Array;
  readonly others: Int32Array;
  readonly sides: Int32Array;
  readonly nexts: Int32Array;
  #count = 0;

  constructor(shapes: number, entries: number) {
    this.heads = new Int32Array(shapes).fill(-1);
    this.tails = new Int32Array(shapes).fill(-1);
    this.others = new Int32Array(entries);
    this.sides = new Int32Array(entries);
    this.nexts = new Int32Array(entries);
  }

  add(owner: number, other: number, sides: number): void {
    const entry = this.#count++;
    const head = this.heads[owner];
    this.others[entry] = other;
    this.sides[entry] = sides;
    this.nexts[entry] = head;
    this.heads[owner] = entry;
    if (head === -1) this.tails[owner] = entry;
  }
}

/** Lists for the shapes with `small[shape]` 1; the others' stay empty. */
export function neighbourLists(labels: RunLabels, small: Uint8Array): NeighbourLists {
  const { runs, meetings, shapes } = labels;
  const { rows, starts } = runs;
  const { count, uppers, lowers, sides } = meetings;
  // Each run meets the one before it and those above; either side may keep an entry.
  const lists = new Filling(small.length, 2 * (starts.length + count));
  const meet = (one: number, other: number, shared: number): void => {
    if (one === other) return;
    if (small[one] === 1) lists.add(one, other, shared);
    if (small[other] === 1) lists.add(other, one, shared);
  };
  for (let y = 0; y + 1 < rows.length; y++) {
    const end = rows[y + 1];
    for (let run = rows[y] + 1; run < end; run++) {
      meet(shapes[run - 1], shapes[run], 1);
    }
  }
  for (let n = 0; n < count; n++) {
    meet(shapes[uppers[n]], shapes[lowers[n]], sides[n]);
  }
  return lists;
}

/** Appends the list of `from` to that of `to`. */
export function joinLists({ heads, tails, nexts }: NeighbourLists, from: number, to: number): void {
  const head = heads[from];
  if (head === -1) return;
  const tail = tails[to];
  if (tail === -1) heads[to] = head;
  else nexts[tail] = head;
  tails[to] = tails[from];
  heads[from] = -1;
  tails[from] = -1;
}

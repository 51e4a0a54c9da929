/** A group of paints: its cost for every target, and the L* of its darkest mix. */
export interface GroupTable {
  readonly costs: Float32Array;
  readonly darkest: number;
}

/** The groups' tables, to be found by up to three members without making anything: -1 is no member. */
export class GroupTables {
  readonly #base: number;
  readonly #tables: (GroupTable | undefined)[] = [];

  constructor(paintCount: number) {
    this.#base = paintCount + 1;
  }

  #at(one: number, two: number, three: number): number {
    return (one + 1) * this.#base * this.#base + (two + 1) * this.#base + three + 1;
  }

  set(members: readonly number[], table: GroupTable): void {
    this.#tables[this.#at(members.at(-3) ?? -1, members.at(-2) ?? -1, members.at(-1) ?? -1)] =
      table;
  }

  /** `added` may stand anywhere among the two others, which rise; -1 where there is none. */
  of(one: number, two: number, added: number): GroupTable {
    const at =
      added > two
        ? this.#at(one, two, added)
        : added > one
          ? this.#at(one, added, two)
          : this.#at(added, one, two);
    const table = this.#tables[at];
    if (!table) throw new RangeError('A group of paints is missing from the library of mixes.');
    return table;
  }
}

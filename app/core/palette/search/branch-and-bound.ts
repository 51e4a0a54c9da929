import type { Checkpoint } from '../checkpoint.ts';
import type { CostTables } from './cost-tables.ts';
import type { PaletteTarget } from './palette-targets.ts';
import { greedySearch } from './score-set.ts';

/** A set that misses the darkest band by less than this counts as reaching it, L*. */
export const closeEnough = 0.5;

/** Sets between two checkpoints: some milliseconds of work. */
const stretch = 2000;

export interface FoundSet {
  /** Indices into the library's paints, rising. */
  readonly members: readonly number[];
  readonly cost: number;
  /** L* of its darkest mix. */
  readonly darkest: number;
}

export interface SetWishes {
  /** At most this many paints. */
  readonly size: number;
  /** In every set. */
  readonly must: readonly number[];
  /** L* of the darkest band: a set has to reach it. */
  readonly darkest: number;
}

/**
 * Largest L* accepted for a set's darkest mix: the L* of the darkest band, or, where no set reaches it, of the darkest
 * mix any set reaches; plus half an L*.
 */
function darkEnough(tables: CostTables, { size, must, darkest }: SetWishes): number {
  const free = size - must.length;
  let reached = 100;
  const addGroup = (members: readonly number[]): void => {
    if (members.filter((member) => !must.includes(member)).length > free) return;
    reached = Math.min(reached, tables.darkest[tables.indexOf(members)]);
  };
  for (let i = 0; i < tables.paintCount; i++) {
    addGroup([i]);
    for (let j = i + 1; j < tables.paintCount; j++) {
      addGroup([i, j]);
      for (let k = j + 1; k < tables.paintCount; k++) addGroup([i, j, k]);
    }
  }
  return Math.max(darkest, reached) + closeEnough;
}

/** Searches the sets depth first, with one row of running minima per depth, so that no set allocates memory. */
class SetWalk {
  readonly #tables: CostTables;
  readonly #targets: readonly PaletteTarget[];
  readonly #wishes: SetWishes;
  readonly #darkEnough: number;
  readonly #rows: Float64Array[];
  readonly #set: number[] = [];
  readonly #visit: (set: FoundSet) => void;
  /** Sets looked at since the last checkpoint. */
  #grown = 0;
  #part = 0;
  /** Sets that cost more are passed over. */
  atMost: number;

  constructor(
    tables: CostTables,
    targets: readonly PaletteTarget[],
    wishes: SetWishes,
    atMost: number,
    visit: (set: FoundSet) => void,
  ) {
    this.#tables = tables;
    this.#targets = targets;
    this.#wishes = wishes;
    this.#darkEnough = darkEnough(tables, wishes);
    this.#rows = Array.from({ length: wishes.size + 1 }, () =>
      new Float64Array(targets.length).fill(Number.POSITIVE_INFINITY),
    );
    this.atMost = atMost;
    this.#visit = visit;
  }

  async run(checkpoint: Checkpoint): Promise<void> {
    let darkest = 100;
    for (const paint of this.#wishes.must) {
      darkest = this.#grow(paint, darkest);
      this.#set.push(paint);
    }
    await this.#begin(0, darkest, checkpoint);
  }

  /** Fills the next row for the set plus one paint; returns the L* of its darkest mix. */
  #grow(paint: number, darkestBefore: number): number {
    this.#grown += 1;
    const set = this.#set;
    const tables = this.#tables;
    const row = this.#rows[set.length + 1];
    row.set(this.#rows[set.length]);
    let darkest = darkestBefore;
    const add = (group: number): void => {
      darkest = Math.min(darkest, tables.darkest[group]);
      tables.lower(row, group);
    };
    add(tables.indexOfRising(-1, -1, paint));
    for (let i = 0; i < set.length; i++) {
      const one = set[i];
      add(tables.indexOfRising(-1, Math.min(one, paint), Math.max(one, paint)));
      for (let j = i + 1; j < set.length; j++) {
        const two = set[j];
        const low = Math.min(one, two, paint);
        const high = Math.max(one, two, paint);
        add(tables.indexOfRising(low, one + two + paint - low - high, high));
      }
    }
    return darkest;
  }

  #price(): number {
    const { prices } = this.#tables;
    let sum = 0;
    for (const paint of this.#set) sum += prices[paint];
    return sum;
  }

  #judge(darkest: number): void {
    const set = this.#set;
    if (set.length < Math.max(1, this.#wishes.must.length) || darkest > this.#darkEnough) return;
    const row = this.#rows[set.length];
    let cost = this.#price();
    for (let t = 0; t < row.length; t++) {
      cost += this.#targets[t].weight * row[t];
    }
    if (cost > this.atMost) return;
    this.#visit({ members: [...set].sort((x, y) => x - y), cost, darkest });
  }

  /**
   * Whether adding paints from place `from` of the order on can be cheap enough. Lower bound: every target costs the
   * least that any mix with any of those paints can reach.
   */
  #mayHelp(from: number): boolean {
    const row = this.#rows[this.#set.length];
    let bound = this.#price() + this.#tables.leastPriceFrom[from];
    for (let t = 0; t < row.length; t++) {
      const { weight } = this.#targets[t];
      const index = from * row.length + t;
      bound += weight * Math.min(row[t], this.#tables.leastFrom[index]);
    }
    return bound <= this.atMost;
  }

  #deepen(from: number, darkest: number): void {
    this.#judge(darkest);
    if (this.#set.length === this.#wishes.size || !this.#mayHelp(from)) return;
    const { order } = this.#tables;
    for (let place = from; place < order.length; place++) {
      const paint = order[place];
      if (this.#wishes.must.includes(paint)) continue;
      const next = this.#grow(paint, darkest);
      this.#set.push(paint);
      this.#deepen(place + 1, next);
      this.#set.pop();
    }
  }

  /** The last three paints are chosen in one go, those before with a checkpoint now and then. */
  async #begin(from: number, darkest: number, checkpoint: Checkpoint): Promise<void> {
    const set = this.#set;
    const { size, must } = this.#wishes;
    if (set.length >= size - 3 && set.length > must.length) {
      this.#deepen(from, darkest);
      return;
    }
    this.#judge(darkest);
    if (set.length === size || !this.#mayHelp(from)) return;
    const { order } = this.#tables;
    const outermost = set.length === must.length;
    for (let place = from; place < order.length; place++) {
      const paint = order[place];
      if (must.includes(paint)) continue;
      if (outermost) this.#part = place / order.length;
      if (this.#grown > stretch) {
        this.#grown = 0;
        await checkpoint(this.#part);
      }
      const next = this.#grow(paint, darkest);
      set.push(paint);
      await this.#begin(place + 1, next, checkpoint);
      set.pop();
    }
  }
}

/**
 * The set of at most `size` paints of least cost: area-weighted mean of each target's best mix, plus the price of each
 * paint; and after it those that cost at most `within` more, the cheaper first, `most` in all. All sets are gone
 * through, or ruled out by what all paints together could do.
 */
export async function branchAndBound(
  within: number,
  most: number,
  tables: CostTables,
  targets: readonly PaletteTarget[],
  wishes: SetWishes,
  checkpoint: Checkpoint,
): Promise<FoundSet[]> {
  // A good set to begin with rules out most of the others at once; the rounding of sums is left room.
  const first = greedySearch(tables, targets, wishes.must, wishes.size);
  const reached = first.darkest <= darkEnough(tables, wishes);
  const atMost = reached ? first.cost + within + 1e-9 : Number.POSITIVE_INFINITY;
  const found: FoundSet[] = [];
  const walk = new SetWalk(tables, targets, wishes, atMost, (set) => {
    found.push(set);
    found.sort(cheaperFirst);
    found.length = Math.min(found.length, most);
    const last = found.length === most ? found[most - 1].cost : Number.POSITIVE_INFINITY;
    walk.atMost = Math.min(walk.atMost, found[0].cost + within, last);
  });
  await walk.run(checkpoint);
  if (found.length === 0) {
    throw new RangeError('There is no paint to choose from: put paints in the box.');
  }
  return found.filter(({ cost }) => cost <= found[0].cost + within);
}

const cheaperFirst = (one: FoundSet, two: FoundSet): number =>
  one.cost - two.cost || inOrder(one.members, two.members);

/** Of sets of equal cost the one with the earlier paints comes first. */
function inOrder(one: readonly number[], two: readonly number[]): number {
  const gaps = one.map((member, i) => member - (two[i] ?? -1));
  return gaps.find((gap) => gap !== 0) ?? one.length - two.length;
}

/** Every set that costs at most so much. */
export async function setsUpTo(
  atMost: number,
  tables: CostTables,
  targets: readonly PaletteTarget[],
  wishes: SetWishes,
  visit: (set: FoundSet) => void,
  checkpoint: Checkpoint,
): Promise<void> {
  await new SetWalk(tables, targets, wishes, atMost, visit).run(checkpoint);
}

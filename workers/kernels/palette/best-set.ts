import type { Checkpoint } from './checkpoint.ts';
import type { CostTables } from './cost-tables.ts';
import type { PaletteTarget } from './palette-target.ts';

/** Added for every paint of a set (own figure, design). */
export const perPaint = 0.3;

/** A set that misses the darkest band by less than this counts as reaching it, L*. */
export const closeEnough = 0.5;

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
 * L* a set's darkest mix may have: that of the darkest band, or where no set reaches it that of the one that
 * misses it least; half an L* more in either case.
 */
function darkEnough(tables: CostTables, { size, must, darkest }: SetWishes): number {
  const free = size - must.length;
  let reached = 100;
  const look = (members: readonly number[]): void => {
    if (members.filter((member) => !must.includes(member)).length > free) return;
    reached = Math.min(reached, tables.darkest[tables.indexOf(members)] as number);
  };
  for (let i = 0; i < tables.paintCount; i++) {
    look([i]);
    for (let j = i + 1; j < tables.paintCount; j++) {
      look([i, j]);
      for (let k = j + 1; k < tables.paintCount; k++) look([i, j, k]);
    }
  }
  return Math.max(darkest, reached) + closeEnough;
}

/** Goes through the sets depth first, with one row of running minima a depth: nothing is allocated a set. */
class SetWalk {
  readonly #tables: CostTables;
  readonly #targets: readonly PaletteTarget[];
  readonly #wishes: SetWishes;
  readonly #darkEnough: number;
  readonly #rows: Float64Array[];
  readonly #set: number[] = [];
  readonly #visit: (set: FoundSet) => void;
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

  /** The row of the set with one paint more; answers its darkest. */
  #grow(paint: number, darkestBefore: number): number {
    const set = this.#set;
    const tables = this.#tables;
    const row = this.#rows[set.length + 1] as Float64Array;
    row.set(this.#rows[set.length] as Float64Array);
    let darkest = darkestBefore;
    const add = (group: number): void => {
      darkest = Math.min(darkest, tables.darkest[group] as number);
      tables.lower(row, group);
    };
    add(tables.indexOfRising(-1, -1, paint));
    for (let i = 0; i < set.length; i++) {
      const one = set[i] as number;
      add(tables.indexOfRising(-1, Math.min(one, paint), Math.max(one, paint)));
      for (let j = i + 1; j < set.length; j++) {
        const two = set[j] as number;
        const low = Math.min(one, two, paint);
        const high = Math.max(one, two, paint);
        add(tables.indexOfRising(low, one + two + paint - low - high, high));
      }
    }
    return darkest;
  }

  #judge(darkest: number): void {
    const set = this.#set;
    if (set.length < Math.max(1, this.#wishes.must.length) || darkest > this.#darkEnough) return;
    const row = this.#rows[set.length] as Float64Array;
    let cost = perPaint * set.length;
    for (let t = 0; t < row.length; t++) {
      cost += (this.#targets[t] as PaletteTarget).weight * (row[t] as number);
    }
    if (cost > this.atMost) return;
    this.#visit({ members: [...set].sort((x, y) => x - y), cost, darkest });
  }

  /**
   * Whether a set with more paints, from `from` on, can be cheap enough: at best every target costs what mixes
   * with any of those paints can do.
   */
  #mayHelp(from: number): boolean {
    const row = this.#rows[this.#set.length] as Float64Array;
    let bound = perPaint * (this.#set.length + 1);
    for (let t = 0; t < row.length; t++) {
      const { weight } = this.#targets[t] as PaletteTarget;
      const at = from * row.length + t;
      bound += weight * Math.min(row[t] as number, this.#tables.leastFrom[at] as number);
    }
    return bound <= this.atMost;
  }

  #deepen(from: number, darkest: number): void {
    this.#judge(darkest);
    if (this.#set.length === this.#wishes.size || !this.#mayHelp(from)) return;
    for (let paint = from; paint < this.#tables.paintCount; paint++) {
      if (this.#wishes.must.includes(paint)) continue;
      const next = this.#grow(paint, darkest);
      this.#set.push(paint);
      this.#deepen(paint + 1, next);
      this.#set.pop();
    }
  }

  /** The first two paints are chosen with checkpoints between, the rest in one go. */
  async #begin(from: number, darkest: number, checkpoint: Checkpoint): Promise<void> {
    const set = this.#set;
    const chosen = set.length - this.#wishes.must.length;
    if (chosen === 2 || set.length === this.#wishes.size) {
      this.#deepen(from, darkest);
      return;
    }
    this.#judge(darkest);
    const { paintCount } = this.#tables;
    for (let paint = from; paint < paintCount; paint++) {
      if (this.#wishes.must.includes(paint)) continue;
      await checkpoint((chosen === 0 ? paint : (set.at(-1) ?? 0)) / paintCount);
      const next = this.#grow(paint, darkest);
      set.push(paint);
      await this.#begin(paint + 1, next, checkpoint);
      set.pop();
    }
  }
}

/**
 * The set of at most `size` paints of least cost: area-weighted mean of each target's best mix, plus
 * 0.3 per paint. All sets are gone through, or ruled out by what all paints together could do. Of sets of equal cost the
 * first in order counts.
 */
export async function bestSet(
  tables: CostTables,
  targets: readonly PaletteTarget[],
  wishes: SetWishes,
  checkpoint: Checkpoint,
): Promise<FoundSet> {
  let best: FoundSet | undefined;
  const walk = new SetWalk(tables, targets, wishes, Number.POSITIVE_INFINITY, (set) => {
    if (best && set.cost >= best.cost) return;
    best = set;
    walk.atMost = set.cost;
  });
  await walk.run(checkpoint);
  if (!best) throw new RangeError('There is no paint to choose from: put paints in the box.');
  return best;
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

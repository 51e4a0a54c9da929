import type { Checkpoint } from '../checkpoint.ts';
import type { CostTables } from './cost-tables.ts';
import type { PaletteTarget } from './palette-targets.ts';
import { greedySearch } from './score-set.ts';
import { darkEnough, type FoundSet, SetWalk, type SetWishes } from './set-walk.ts';

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

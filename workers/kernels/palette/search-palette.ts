import type { Paint } from '../../../app/model/paint.ts';
import type { PlanWishes } from '../../../app/model/plan-wishes.ts';
import type { Slot } from '../../../app/model/slot.ts';
import { closeEnough, type FoundSet } from './best-sets.ts';
import type { Checkpoint } from './checkpoint.ts';
import { openSearch, paintsOf } from './open-search.ts';
import { preferredTies } from './preferred-ties.ts';

export interface FoundPalette {
  readonly paints: readonly Paint[];
  /** Mean CIEDE2000 of the targets' best mixes with the surcharges of the design; lower is better. */
  readonly cost: number;
  /** The least cost of all sets: at most `nearTie` below. */
  readonly leastCost: number;
  /** By how much the darkest band is out of reach, L*; 0 where it is reached. */
  readonly shortfall: number;
}

/**
 * The palette of least cost for the painted slots' targets, among all sets of at most
 * `wishes.paletteSize` paints her wishes allow, with every mix of at most three paints in whole parts
 * (sum at most 8) at half-octave loads, as a single wash on white paper. Among near ties the one with least
 * against its paints: transparent, single pigments, no caution. Washes over washes come in only with
 * the layered solve.
 */
export async function searchPalette(
  slots: readonly Slot[],
  known: readonly Paint[],
  wishes: PlanWishes,
  checkpoint: Checkpoint,
): Promise<FoundPalette> {
  const search = await openSearch(slots, known, wishes, checkpoint);
  const [chosen] = preferredTies(search) as [FoundSet];
  const missed = chosen.darkest - search.wishes.darkest;
  return {
    paints: paintsOf(search, chosen),
    cost: chosen.cost,
    leastCost: (search.ties[0] as FoundSet).cost,
    shortfall: missed <= closeEnough ? 0 : missed,
  };
}

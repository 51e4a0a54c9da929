import type { PlanWishes } from '../../decisions/plan-wishes.ts';
import type { Paint } from '../../paint/paint.ts';
import type { Slot } from '../../reading/slot.ts';
import type { Checkpoint } from '../checkpoint.ts';
import type { LibraryMemo } from '../library/mix-library.ts';
import { paintsAllowed } from '../paints-allowed.ts';
import { branchAndBound, closeEnough, type FoundSet, type SetWishes } from './branch-and-bound.ts';
import {
  CostTables,
  darkestBandLightness,
  type PaletteTarget,
  paletteTargets,
} from './cost-tables.ts';

/** Own weights: opaque paint dulls a glaze, a mixed tube muddies, a metal asks for care. */
const opacity = { T: 0, ST: 0.5, SO: 1.5, O: 2 } as const;
const unknown = 1;
const caution = 1;
const eachPigmentMore = 1;

/**
 * What speaks against paints, all else being equal: opaque ones, tubes of several pigments, those to be
 * handled with care. 0 for single transparent pigments without a caution.
 */
export const againstPaints = (paints: readonly Paint[]): number =>
  paints.reduce((sum, { ci, properties }) => {
    const opaque = properties.transparency ? opacity[properties.transparency] : unknown;
    return sum + opaque + eachPigmentMore * (ci.length - 1) + (properties.caution ? caution : 0);
  }, 0);

/** How much paints granulate, 0..2 each, on average: 0 where nobody knows. */
export const granulationOf = (paints: readonly Paint[]): number =>
  paints.reduce((sum, { properties }) => sum + (properties.granulation ?? 0), 0) /
  Math.max(1, paints.length);

/** Sets whose costs differ by no more than this are as good as each other (own). */
export const nearTie = 0.1;

/** A search with its tables built and the sets of least cost found; further questions to it are quick. */
export interface PaletteSearch {
  /** What may be chosen from; sets hold indices into it. */
  readonly paints: readonly Paint[];
  readonly tables: CostTables;
  readonly targets: readonly PaletteTarget[];
  readonly wishes: SetWishes;
  /** The set of least cost, then those as good as it, rising in cost. */
  readonly ties: readonly FoundSet[];
}

export const paintsOf = ({ paints }: PaletteSearch, { members }: FoundSet): Paint[] =>
  members.map((n) => paints[n]);

/**
 * Looks for the sets of least cost for the painted slots' targets, among mixes `memo` keeps for the next search.
 * Throws RangeError as `paintsAllowed`.
 */
export async function openSearch(
  slots: readonly Slot[],
  known: readonly Paint[],
  asked: PlanWishes,
  checkpoint: Checkpoint,
  memo: LibraryMemo,
): Promise<PaletteSearch> {
  const allowed = paintsAllowed(known, asked);
  const targets = paletteTargets(slots);
  const { paints, groups } = await memo.libraryOf(allowed.paints, (part) => checkpoint(0.5 * part));
  const tables = await CostTables.of({ paints, groups }, targets, (part) =>
    checkpoint(0.5 + 0.4 * part),
  );
  const must = allowed.must.map((paint) => paints.indexOf(paint));
  const wishes = { size: allowed.size, must, darkest: darkestBandLightness(targets) };
  const ties = await branchAndBound(nearTie, tables, targets, wishes, (part) =>
    checkpoint(0.9 + 0.1 * part),
  );
  return { paints, tables, targets, wishes, ties };
}

/** Sets as good as the best, as the trade would choose among them: least against their paints first, then the cheaper. */
export function preferredTies(search: PaletteSearch): FoundSet[] {
  return search.ties
    .map((set) => ({ set, against: againstPaints(paintsOf(search, set)) }))
    .sort((one, two) => one.against - two.against)
    .map(({ set }) => set);
}

export interface FoundPalette {
  readonly paints: readonly Paint[];
  /** Mean CIEDE2000 of the targets' best mixes with the surcharges per paint; lower is better. */
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
  memo: LibraryMemo,
): Promise<FoundPalette> {
  const search = await openSearch(slots, known, wishes, checkpoint, memo);
  const [chosen] = preferredTies(search) as [FoundSet];
  const missed = chosen.darkest - search.wishes.darkest;
  return {
    paints: paintsOf(search, chosen),
    cost: chosen.cost,
    leastCost: search.ties[0].cost,
    shortfall: missed <= closeEnough ? 0 : missed,
  };
}

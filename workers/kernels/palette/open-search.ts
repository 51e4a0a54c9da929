import type { Paint } from '../../../app/model/paint.ts';
import type { PlanWishes } from '../../../app/model/plan-wishes.ts';
import type { Slot } from '../../../app/model/slot.ts';
import { bestSets, type FoundSet, type SetWishes } from './best-sets.ts';
import type { Checkpoint } from './checkpoint.ts';
import { CostTables } from './cost-tables.ts';
import { keptLibrary } from './kept-library.ts';
import { paintsAllowed } from './paints-allowed.ts';
import { darkestBandLightness, type PaletteTarget, paletteTargets } from './palette-target.ts';

/** Sets whose costs differ by no more than this are as good as each other (design). */
export const nearTie = 0.1;

/** A search with its tables made and the sets of least cost found: what else is asked of it is quick. */
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
  members.map((n) => paints[n] as Paint);

/** Looks for the sets of least cost for the painted slots' targets. Throws RangeError as `paintsAllowed`. */
export async function openSearch(
  slots: readonly Slot[],
  known: readonly Paint[],
  asked: PlanWishes,
  checkpoint: Checkpoint,
): Promise<PaletteSearch> {
  const allowed = paintsAllowed(known, asked);
  const targets = paletteTargets(slots);
  const { paints, groups } = await keptLibrary(allowed.paints, (part) => checkpoint(0.5 * part));
  const tables = await CostTables.of({ paints, groups }, targets, (part) =>
    checkpoint(0.5 + 0.4 * part),
  );
  const must = allowed.must.map((paint) => paints.indexOf(paint));
  const wishes = { size: allowed.size, must, darkest: darkestBandLightness(targets) };
  const ties = await bestSets(nearTie, tables, targets, wishes, (part) =>
    checkpoint(0.9 + 0.1 * part),
  );
  return { paints, tables, targets, wishes, ties };
}

import type { Paint } from '../../../app/model/paint.ts';
import type { Slot } from '../../../app/model/reading.ts';
import type { PlanWishes } from '../../../app/model/wash-plan.ts';
import { bestSet, closeEnough, type FoundSet, setsUpTo } from './best-set.ts';
import type { Checkpoint } from './checkpoint.ts';
import { CostTables } from './cost-tables.ts';
import { keptLibrary } from './kept-library.ts';
import { paintsAllowed } from './paints-allowed.ts';
import { darkestBandLightness, paletteTargets } from './palette-target.ts';
import { againstPaints } from './preference.ts';

export interface FoundPalette {
  readonly paints: readonly Paint[];
  /** Mean CIEDE2000 of the targets' best mixes with the surcharges of the design; lower is better. */
  readonly cost: number;
  /** The least cost of all sets: at most `nearTie` below. */
  readonly leastCost: number;
  /** By how much the darkest band is out of reach, L*; 0 where it is reached. */
  readonly shortfall: number;
}

/** Sets whose costs differ by no more than this are as good as each other (design). */
export const nearTie = 0.1;

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
  const allowed = paintsAllowed(known, wishes);
  const targets = paletteTargets(slots);
  const { paints, groups } = await keptLibrary(allowed.paints, (part) => checkpoint(0.5 * part));
  const tables = await CostTables.of({ paints, groups }, targets, (part) =>
    checkpoint(0.5 + 0.3 * part),
  );
  const must = allowed.must.map((paint) => paints.indexOf(paint));
  const setWishes = { size: allowed.size, must, darkest: darkestBandLightness(targets) };
  const best = await bestSet(tables, targets, setWishes, (part) => checkpoint(0.8 + 0.1 * part));
  const paintsOf = (set: FoundSet): Paint[] => set.members.map((n) => paints[n] as Paint);
  let chosen = best;
  let against = againstPaints(paintsOf(best));
  await setsUpTo(
    best.cost + nearTie,
    tables,
    targets,
    setWishes,
    (set) => {
      const own = againstPaints(paintsOf(set));
      if (own > against || (own === against && set.cost >= chosen.cost)) return;
      chosen = set;
      against = own;
    },
    (part) => checkpoint(0.9 + 0.1 * part),
  );
  const missed = chosen.darkest - setWishes.darkest;
  return {
    paints: paintsOf(chosen),
    cost: chosen.cost,
    leastCost: best.cost,
    shortfall: missed <= closeEnough ? 0 : missed,
  };
}

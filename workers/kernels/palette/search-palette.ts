import type { Paint } from '../../../app/model/paint.ts';
import type { Slot } from '../../../app/model/reading.ts';
import type { PlanWishes } from '../../../app/model/wash-plan.ts';
import { bestSet } from './best-set.ts';
import type { Checkpoint } from './checkpoint.ts';
import { keptLibrary } from './kept-library.ts';
import { paintsAllowed } from './paints-allowed.ts';
import { darkestBandLightness, paletteTargets } from './palette-target.ts';

export interface FoundPalette {
  readonly paints: readonly Paint[];
  /** Mean CIEDE2000 of the targets' best mixes with the surcharges of the design; lower is better. */
  readonly cost: number;
  /** By how much the darkest band is out of reach, L*; 0 where it is reached. */
  readonly shortfall: number;
}

/** Most paints in one mix of the search. */
export const searchedMixSize = 2;

/**
 * The palette of least cost for the painted slots' targets, among all sets of at most
 * `wishes.paletteSize` paints her wishes allow. What is exact: every set is gone through, with
 * every mix of at most TWO paints in whole parts (sum at most 8) at half-octave loads, as a single wash
 * on white paper. Mixes of three and washes over washes come in only with the layered solve.
 */
export async function searchPalette(
  slots: readonly Slot[],
  known: readonly Paint[],
  wishes: PlanWishes,
  checkpoint: Checkpoint,
): Promise<FoundPalette> {
  const allowed = paintsAllowed(known, wishes);
  const targets = paletteTargets(slots);
  const library = await keptLibrary(allowed.paints, searchedMixSize, (part) =>
    checkpoint(0.4 * part),
  );
  const must = allowed.must.map((paint) => library.paints.indexOf(paint));
  const found = await bestSet(
    library,
    targets,
    darkestBandLightness(targets),
    allowed.size,
    must,
    (part) => checkpoint(0.4 + 0.6 * part),
  );
  return {
    paints: found.members.map((member) => library.paints[member] as Paint),
    cost: found.cost,
    shortfall: found.shortfall,
  };
}

import { lostWithout } from '../../../app/model/lost-without.ts';
import type { Paint } from '../../../app/model/paint.ts';
import type { PaletteCharacter, PaletteOffer } from '../../../app/model/palette-offer.ts';
import type { Reading } from '../../../app/model/reading.ts';
import { paletteEntries } from '../plan/palette-entries.ts';
import type { PlanCheckpoint } from '../plan/plan-checkpoint.ts';
import type { PlannedSlots } from '../plan/planned-slots.ts';
import { solvePalette } from '../plan/solve-palette.ts';
import { valuesShort } from './dark-remedy.ts';
import { judgeSet } from './judge-set.ts';
import { lastDifference } from './last-difference.ts';
import type { PaletteSearch } from './open-search.ts';
import { paintLosses } from './paint-losses.ts';
import { perPaint } from './palette-target.ts';

/** Where a palette is judged: the picture, what is planned of it, and the tables that hold the paints. */
export interface OfferPlace {
  readonly reading: Reading;
  readonly planned: PlannedSlots;
  readonly search: PaletteSearch;
  /** L* the darks should have. */
  readonly wantedDark: number;
}

export interface JudgedOffer {
  /** Those the washes need, and those she asked for. */
  readonly paints: readonly Paint[];
  /** L* of their darkest mix. */
  readonly reached: number;
  /** As the design's cost of a set, but after the layered solve: lower is better. */
  readonly rating: number;
  readonly offered: (character: PaletteCharacter) => PaletteOffer;
}

/**
 * What some of the search's paints really do, wash over wash. All palettes are judged against the same targets,
 * those for the darkest her box reaches: one that can't go as deep is further off.
 */
export async function judgeOffer(
  { reading, planned, search, wantedDark }: OfferPlace,
  paints: readonly Paint[],
  checkpoint: PlanCheckpoint,
): Promise<JudgedOffer> {
  const { facts } = await solvePalette(reading, planned, paints, checkpoint);
  const used = facts.paints.length > 0 ? facts.paints : paints;
  const members = used.map((paint) => search.paints.indexOf(paint)).sort((x, y) => x - y);
  const { cost, darkest } = judgeSet(search.tables, search.targets, members);
  const { paper } = planned.wide.range;
  const meanDifference = lastDifference(planned.wide.slots, facts.passages, [paper, 0, 0]);
  const losses = paintLosses(search.tables, search.targets, members, reading.families);
  const entries = paletteEntries({ ...facts, paints: used });
  const offer = {
    cost,
    meanDifference,
    valuesShort: valuesShort(darkest, wantedDark),
    paints: members.map((member, n) => {
      const { id } = search.paints[member] as Paint;
      const why = entries.find((entry) => entry.id === id)?.why ?? '';
      return { id, why, lostWithout: lostWithout(losses[n] ?? null) };
    }),
  };
  return {
    paints: used,
    reached: darkest,
    rating: meanDifference + perPaint * used.length,
    offered: (character) => ({ character, ...offer }),
  };
}

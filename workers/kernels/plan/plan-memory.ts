import type { Paint } from '../../../app/model/paint.ts';
import type { PlanWishes } from '../../../app/model/plan-wishes.ts';
import type { Slot } from '../../../app/model/slot.ts';
import { LastAnswers } from '../last-answers.ts';
import type { FoundPalette } from '../palette/search-palette.ts';
import type { SolvedPassage } from './plan-facts.ts';

/**
 * What earlier plans found out, for who plans again and again: a change of the steps, the time or the air asks for
 * no other paints and mixes.
 */
export interface PlanMemory {
  readonly palettes: LastAnswers<FoundPalette>;
  readonly passages: LastAnswers<readonly SolvedPassage[]>;
}

export const createPlanMemory = (): PlanMemory => ({
  palettes: new LastAnswers(4),
  passages: new LastAnswers(8),
});

const names = (paints: readonly Paint[]) => paints.map(({ id, revision }) => [id, revision]);

/** All that the search for a palette rests on. */
export function paletteAsked(
  slots: readonly Slot[],
  known: readonly Paint[],
  { box, colours, paletteSize, must, exclude, chosen }: PlanWishes,
): string {
  const wanted = [box, colours, paletteSize, must, exclude, chosen];
  return JSON.stringify([slots, names(known), wanted]);
}

/** All that the washes of a sheet rest on. */
export const passagesAsked = (
  slots: readonly Slot[],
  paints: readonly Paint[],
  { washes, puddlesPerWash }: PlanWishes,
): string => JSON.stringify([slots, names(paints), washes, puddlesPerWash]);

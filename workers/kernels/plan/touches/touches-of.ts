import type { Touch } from '../../../../app/model/touch.ts';
import type { PlanFacts } from '../plan-facts.ts';
import { plannedWhites } from '../planned-whites.ts';
import type { StepDraft } from '../step-draft.ts';
import type { CallFor } from './called.ts';
import { charging } from './charging.ts';
import { dampLifting } from './damp-lifting.ts';
import { dryBrush } from './dry-brush.ts';
import { gradedWash } from './graded-wash.ts';
import { merging } from './merging.ts';
import { negativePainting } from './negative-painting.ts';
import { scraping } from './scraping.ts';
import { washInHand } from './wash-in-hand.ts';
import { waterDrops } from './water-drops.ts';

/** In the order they are done: with the stroke, while it shines, as the shine goes, damp; dry brush last (R4). */
const calls: readonly CallFor[] = [
  gradedWash,
  negativePainting,
  merging,
  charging,
  waterDrops,
  dampLifting,
  dryBrush,
];

/** More than these nobody keeps in mind in one step. */
export const mostTouches = 3;

/**
 * The smaller techniques the reading calls for in a step, at most three: those she has decided, then those about
 * most of the sheet, in the order they are done. Empty for a plain picture.
 */
export function touchesOf(facts: PlanFacts, draft: StepDraft): Touch[] {
  if (draft.kind === 'last-lights') {
    const lights = plannedWhites(facts)?.last ?? [];
    return scraping(facts.paper, draft, lights.length);
  }
  const wash = washInHand(facts, draft);
  if (!wash) return [];
  const called = calls.flatMap((call) => call(wash) ?? []);
  const kept = new Set(
    [...called]
      .sort(
        (one, other) =>
          Number(other.hers ?? false) - Number(one.hers ?? false) || other.share - one.share,
      )
      .slice(0, mostTouches),
  );
  return called.filter((one) => kept.has(one)).map(({ touch }) => touch);
}

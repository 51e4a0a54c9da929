import { areaCm2, type PlanFacts } from '../plan-facts.ts';
import type { StepDraft } from '../step-draft.ts';
import { washInHand } from './wash-in-hand.ts';

/**
 * The largest brush that will do it, by the side of the shape, mm on the sheet. Round numbers have no standard;
 * common practice, no source.
 */
const brushes = [
  { sideMm: 200, name: 'a large flat (40 to 50 mm) or a mop' },
  { sideMm: 100, name: 'a flat (20 to 25 mm) or a mop' },
  { sideMm: 45, name: 'a mop or a round 12' },
  { sideMm: 18, name: 'a round 12' },
  { sideMm: 7, name: 'a round 8' },
  { sideMm: 3, name: 'a round 6' },
  { sideMm: 0, name: 'a rigger' },
] as const;

/** From so many small shapes on a second brush is worth taking up (own figure). */
const manySmall = 10;

const brushOf = (sideMm: number): string =>
  (brushes.find((one) => sideMm >= one.sideMm) ?? brushes[brushes.length - 1])?.name ?? '';

/** For a wash: by its largest shape, the first by all it covers; later a smaller one for many small shapes. */
function washBrush(facts: PlanFacts, draft: StepDraft): string {
  const own = draft.slots.flatMap((i) => facts.slots[i] ?? []);
  const largest = own.reduce((most, slot) => Math.max(most, slot.largestMm2), 0);
  const small = own.reduce((sum, slot) => sum + slot.smallShapes, 0);
  const first = washInHand(facts, draft)?.wash === 1;
  const sideMm = Math.sqrt(first ? 100 * areaCm2(facts, draft.slots) : largest);
  if (draft.technique === 'dry brush') return 'an old flat or a round 8';
  const main = brushOf(sideMm);
  const second =
    !first && small >= manySmall && sideMm >= 7 ? '; a round 6 for the small shapes' : '';
  const damp = draft.soften === '' ? '' : '; a clean damp brush for the edges';
  return `${main}${second}${damp}`;
}

/** The brushes of a step, in words with '; ' between them; null where none is needed. */
export function brushFor(facts: PlanFacts, draft: StepDraft): string | null {
  switch (draft.kind) {
    case 'wash':
      return washBrush(facts, draft);
    case 'mask':
      return 'an old small brush drawn over soap first';
    case 'lift':
      return 'a clean round 8';
    case 'splatter':
      return 'an old round 8';
    case 'accents':
      return 'a round 6; a rigger for lines';
    case 'last-lights':
      return draft.technique === 'scraping' ? null : 'a round 2 or a rigger';
    default:
      return null;
  }
}

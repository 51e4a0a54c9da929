import type { Step } from '../../../../app/model/wash-plan.ts';
import { washesBorne } from '../../../../app/model/washes-borne.ts';
import { isSmallWhite } from '../../../../app/model/whites.ts';
import type { PlanFacts } from '../plan-facts.ts';
import { plannedWhites } from '../planned-whites.ts';
import type { RuleLimits } from '../rules/broken-rule.ts';

const usualPuddles = 3;

/** Small whites that are to be painted round, counted a passage. */
function smallWhites(facts: PlanFacts, planned: readonly Step[]): Map<string, number> {
  const counts = new Map<string, number>();
  const add = (slot: number, count: number): void => {
    const passage = facts.slots[slot]?.passage ?? '';
    counts.set(passage, (counts.get(passage) ?? 0) + count);
  };
  const whites = plannedWhites(facts);
  for (const white of whites?.round ?? []) if (isSmallWhite(white)) add(white.slot, 1);
  // A reading from before whites were listed has them all masked, or none.
  const unlisted = whites === null && !planned.some(({ kind }) => kind === 'mask');
  for (const [i, slot] of facts.slots.entries()) {
    if (unlisted && slot.reserve && slot.share > 0) add(i, slot.smallShapes);
  }
  return counts;
}

/** What her changes are held against: the plan as it was solved and ordered, before any of them. */
export function ruleLimitsOf(facts: PlanFacts, planned: readonly Step[]): RuleLimits {
  const { passages, reading, paper } = facts;
  const washes = passages.map((passage) => passage.washes.length);
  const puddles = passages.flatMap((passage) =>
    passage.washes.map(({ mixes }) => new Set(mixes.flatMap(({ puddle }) => puddle ?? [])).size),
  );
  return {
    washes: Math.max(washesBorne(paper), ...washes),
    puddlesPerWash: Math.max(usualPuddles, ...puddles),
    borders: reading.borders,
    planned: planned.at(-1)?.after ?? [],
    smallWhites: smallWhites(facts, planned),
  };
}

import type { Lab } from '../../../../app/model/lab.ts';
import { washesBorne } from '../../../../app/model/washes-borne.ts';
import type { PlanFacts } from '../plan-facts.ts';
import type { RuleLimits } from '../rules/broken-rule.ts';

const usualPuddles = 3;

/** What her changes are held against: the plan as it was solved, before any of them. */
export function ruleLimitsOf(
  { passages, reading, paper }: PlanFacts,
  planned: readonly Lab[],
): RuleLimits {
  const washes = passages.map((passage) => passage.washes.length);
  const puddles = passages.flatMap((passage) =>
    passage.washes.map(({ mixes }) => new Set(mixes.flatMap(({ puddle }) => puddle ?? [])).size),
  );
  return {
    washes: Math.max(washesBorne(paper), ...washes),
    puddlesPerWash: Math.max(usualPuddles, ...puddles),
    borders: reading.borders,
    planned,
  };
}

import type { PlanFacts } from '../../../app/core/plan/plan-facts.ts';

/** Facts whose paints all stain as said: 0 lifts easily, 2 stays, null is unknown. */
export const stained = (facts: PlanFacts, staining: 0 | 1 | 2 | null): PlanFacts => ({
  ...facts,
  paints: facts.paints.map((paint) => ({
    ...paint,
    properties: { ...paint.properties, staining },
  })),
});

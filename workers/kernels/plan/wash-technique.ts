import type { Technique } from '../../../app/model/wash-plan.ts';
import type { SolvedWash } from './lay-wash.ts';
import { outerBorders, softShare } from './outer-borders.ts';
import { areaCm2, type PlanFacts, paintsIn } from './plan-facts.ts';

/**
 * Outer borders softer than this, by length, ask for wet paper: half of them in a first wash, more in a later
 * one, which has to be wetted anew and dries for long (own figures).
 */
const softEnough = { first: 0.5, later: 0.65 } as const;

/** Over this share of what was painted before, a later thin wash is a glaze (own figure). */
const glazeShare = 0.6;

/**
 * How a wash goes on: mostly soft outer borders ask for wet paper. A later wash goes on wetted paper
 * only if nothing under it lifts easily (R16); else it is dry and its edges are softened. A thin one over
 * most of the painted area is a glaze.
 */
export function washTechnique(
  facts: PlanFacts,
  wash: SolvedWash,
  before: readonly SolvedWash[],
): Technique {
  const soft = softShare(outerBorders(facts.reading, wash.slots));
  if (before.length === 0) return soft > softEnough.first ? 'wet-in-wet' : 'wet on dry';
  const under = paintsIn(
    facts,
    before.flatMap((one) => one.mixes),
  );
  const lifts = under.some((paint) => paint.properties.staining === 0);
  if (soft > softEnough.later && !lifts) return 'wet-in-wet';
  const covered =
    areaCm2(facts, wash.slots) / Math.max(1e-9, areaCm2(facts, before[0]?.slots ?? []));
  const thin = wash.mixes.every((mix) => mix.load < 6);
  return thin && covered > glazeShare ? 'glaze' : 'wet on dry';
}

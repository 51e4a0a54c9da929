import type { Technique } from '../../../app/model/technique.ts';
import { firstWashIsWet } from './first-wash-is-wet.ts';
import { outerBorders, softShare } from './outer-borders.ts';
import type { SolvedWash } from './plan-facts.ts';
import { areaCm2, type PlanFacts, paintsIn } from './plan-facts.ts';

/**
 * Outer borders softer than this, by length, ask for wet paper also in a later wash: more than in a first
 * one, as it has to be wetted anew and dries for long (own figure).
 */
const softEnoughLater = 0.65;

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
  if (before.length === 0) {
    return firstWashIsWet(facts.reading, wash.slots) ? 'wet-in-wet' : 'wet on dry';
  }
  const soft = softShare(outerBorders(facts.reading, wash.slots));
  const under = paintsIn(
    facts,
    before.flatMap((one) => one.mixes),
  );
  const lifts = under.some((paint) => paint.properties.staining === 0);
  if (soft > softEnoughLater && !lifts) return 'wet-in-wet';
  const covered =
    areaCm2(facts, wash.slots) / Math.max(1e-9, areaCm2(facts, before[0]?.slots ?? []));
  const thin = wash.mixes.every((mix) => mix.load < 6);
  return thin && covered > glazeShare ? 'glaze' : 'wet on dry';
}

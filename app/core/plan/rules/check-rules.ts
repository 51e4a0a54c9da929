import { maxWashes } from '../../drying/paper-choice.ts';
import { proposedPuddles } from '../../limits.ts';
import { isSmallWhite } from '../../reading/whites/whites.ts';
import { saidKey } from '../../words/plan/said.ts';
import type { Said } from '../../words/plan/words.ts';
import type { Step } from '../plan.ts';
import type { PlanFacts } from '../plan-facts.ts';
import { plannedWhites } from '../steps/white-steps.ts';
import type { BrokenRule, Check, RuledPlan, RuleLimits } from './broken-rule.ts';
import {
  coolAfterDryer,
  fewPuddles,
  lightsLast,
  lookLast,
  passagesApart,
  preparedFirst,
  saidInFull,
  softenInside,
  splatterInTexture,
} from './step-rules.ts';
import { techniquesInOrder } from './technique-rules.ts';
import {
  accentsLate,
  bigBeforeSmall,
  fewWashes,
  lightBeforeDark,
  nothingLightens,
  valuesReached,
  washesForValues,
} from './wash-rules.ts';
import {
  dryBeforeNext,
  edgesByTechnique,
  liftWhatLifts,
  paperAsPainted,
  thinGlaze,
  valuesInSeparateWashes,
  wetAgain,
} from './wetness-rules.ts';
import { maskFirst, maskOff, smallWhitesInWet, whitesStay } from './white-rules.ts';

/** The checks, gravest first; a step's sentences follow this order. */
const checks: readonly Check[] = [
  dryBeforeNext,
  maskFirst,
  maskOff,
  whitesStay,
  smallWhitesInWet,
  lightBeforeDark,
  nothingLightens,
  wetAgain,
  valuesInSeparateWashes,
  paperAsPainted,
  edgesByTechnique,
  thinGlaze,
  fewWashes,
  washesForValues,
  bigBeforeSmall,
  accentsLate,
  liftWhatLifts,
  fewPuddles,
  splatterInTexture,
  lightsLast,
  lookLast,
  passagesApart,
  preparedFirst,
  valuesReached,
  softenInside,
  coolAfterDryer,
  saidInFull,
  techniquesInOrder,
];

/**
 * The ordering rules R1..R21 (rules.md) a plan breaks, each with the step and what will happen; empty for a
 * sound one. What no plan can show is not checked: R4, R6, R10 inside one wash; R13 of splatter.
 */
export const checkRules = (plan: RuledPlan, limits: RuleLimits): BrokenRule[] =>
  checks.flatMap((check) => check(plan, limits));

/** The same as lines: the rule, and where. */
export const describeBrokenRules = (plan: RuledPlan, limits: RuleLimits): string[] =>
  checkRules(plan, limits).map(({ rule, what }) => `${rule}: ${what}`);

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

/** The limits her changes are checked against, taken from the plan before she changed it. */
export function ruleLimitsOf(facts: PlanFacts, planned: readonly Step[]): RuleLimits {
  const { passages, reading, paper } = facts;
  const washes = passages.map((passage) => passage.washes.length);
  const puddles = passages.flatMap((passage) =>
    passage.washes.map(({ mixes }) => new Set(mixes.flatMap(({ puddle }) => puddle ?? [])).size),
  );
  return {
    washes: Math.max(maxWashes(paper), ...washes),
    puddlesPerWash: Math.max(proposedPuddles, ...puddles),
    hairDryer: facts.weather.hairDryer === true,
    borders: reading.borders,
    planned: planned.at(-1)?.after ?? [],
    smallWhites: smallWhites(facts, planned),
  };
}

const nameOf = ({ rule, step, sentence }: BrokenRule): string =>
  `${rule} ${step} ${saidKey(sentence)}`;

/**
 * Attaches the rules her changes broke to the steps of the plan: the gravest one as `consequence`, the others as
 * `alsoHappens`. Rules that were broken `before` her changes are not mentioned.
 */
export function withConsequences(
  plan: RuledPlan,
  before: RuledPlan,
  limits: RuleLimits,
): readonly Step[] {
  const known = new Set(checkRules(before, limits).map(nameOf));
  const said = new Map<string, Map<string, Said>>();
  for (const one of checkRules(plan, limits)) {
    if (known.has(nameOf(one))) continue;
    const { step, sentence } = one;
    said.set(step, (said.get(step) ?? new Map()).set(saidKey(sentence), sentence));
  }
  return plan.steps.map((step) => {
    const sentences = said.get(step.key);
    if (!sentences) return step;
    const [consequence, ...alsoHappens] = sentences.values();
    return { ...step, consequence, ...(alsoHappens.length > 0 && { alsoHappens }) };
  });
}

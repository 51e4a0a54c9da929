import { bigBeforeSmall, touchesLate } from './rules/big-first.ts';
import type { BrokenRule, Check, RuledPlan, RuleLimits } from './rules/broken-rule.ts';
import { dryBeforeNext, paperAsPainted, valuesApart } from './rules/dry-between.ts';
import { edgesByTechnique, thinGlaze } from './rules/edges-by-technique.ts';
import { fewPuddles } from './rules/few-puddles.ts';
import { fewWashes, washesForValues } from './rules/few-washes.ts';
import { lightsLast, lookLast, splatterInTexture } from './rules/finishing-rules.ts';
import { liftWhatLifts, wetAgain } from './rules/lifting-rules.ts';
import { lightBeforeDark, nothingLightens } from './rules/light-first.ts';
import { maskFirst, maskOff } from './rules/masking-rules.ts';
import { passagesApart } from './rules/passages-apart.ts';
import { preparedFirst } from './rules/prepared-first.ts';
import { coolAfterDryer, saidInFull, softenInside } from './rules/said-in-full.ts';
import { valuesReached } from './rules/values-reached.ts';
import { smallWhitesInWet, whitesStay } from './rules/whites-stay.ts';
import { touchesInOrder } from './touches/touches-in-order.ts';

/** The gravest first: what is said at a step is said in this order. */
const checks: readonly Check[] = [
  dryBeforeNext,
  maskFirst,
  maskOff,
  whitesStay,
  smallWhitesInWet,
  lightBeforeDark,
  nothingLightens,
  wetAgain,
  valuesApart,
  paperAsPainted,
  edgesByTechnique,
  thinGlaze,
  fewWashes,
  washesForValues,
  bigBeforeSmall,
  touchesLate,
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
  touchesInOrder,
];

/**
 * The ordering rules R1..R21 a plan breaks, each with the step and what will happen; empty for a sound one. Not
 * held here: what no plan can show (R4, R6, R10 inside one wash; R13 of splatter). Common
 * practice, as listed in the trade notes.
 */
export const rulesBroken = (plan: RuledPlan, limits: RuleLimits): BrokenRule[] =>
  checks.flatMap((check) => check(plan, limits));

/** The same as lines: the rule, and where. */
export const brokenRules = (plan: RuledPlan, limits: RuleLimits): string[] =>
  rulesBroken(plan, limits).map(({ rule, what }) => `${rule}: ${what}`);

import { creamFrom } from '../../paint/consistency.ts';
import { outerBorders, softShare } from '../../reading/edges/slot-borders.ts';
import type { Said } from '../../words/plan/words.ts';
import type { Step, StepKind } from '../plan.ts';
import { leavesWet, liesElsewhere } from '../plan.ts';
import {
  type BrokenRule,
  broken,
  type Check,
  mixesOfStep,
  mixesUnderStep,
  overlap,
  passageOf,
  type RuledPlan,
  stainsOf,
  washesOf,
} from './broken-rule.ts';

const onWet: Record<Exclude<StepKind, 'wash' | 'dry'>, Said> = {
  prepare: { say: 'wet/prepare' },
  puddles: { say: 'wet/puddles' },
  transfer: { say: 'wet/transfer' },
  mask: { say: 'wet/mask' },
  unmask: { say: 'wet/unmask' },
  lift: { say: 'wet/lift' },
  splatter: { say: 'wet/splatter' },
  details: { say: 'wet/details' },
  accents: { say: 'wet/accents' },
  'last-lights': { say: 'wet/last-lights' },
  'last-look': { say: 'wet/last-look' },
};

const mostLoad = (plan: RuledPlan, step: Step): number =>
  Math.max(0, ...mixesOfStep(plan, step).map(({ load }) => load));

/** Into a wet wash only thicker paint may go (R6): the thinner one pushes it away. */
function washOnWet(plan: RuledPlan, step: Step, wet: Step): Said {
  return mostLoad(plan, step) < mostLoad(plan, wet)
    ? { say: 'wet/thin-wash' }
    : { say: 'wet/wash' };
}

/** R5, R7: nothing is done on a sheet that has not dried. */
export const dryBeforeNext: Check = (plan) => {
  let wet: Step | null = null;
  return plan.steps.flatMap((step): BrokenRule[] => {
    const under = wet;
    if (step.kind === 'dry') wet = null;
    else if (leavesWet(step)) wet = step;
    if (!under || step.kind === 'dry' || liesElsewhere(under, step)) return [];
    const sentence = step.kind === 'wash' ? washOnWet(plan, step, under) : onWet[step.kind];
    return [broken('R5, R7', step, `${step.key} on a sheet that has not dried`, sentence)];
  });
};

/** R5: wet-in-wet on shiny or satin paper, all else on dry paper or as the step says. */
export const paperAsPainted: Check = ({ steps }) =>
  steps.flatMap((step): BrokenRule[] => {
    const asksWet = step.paper === 'shiny' || step.paper === 'satin';
    if (step.kind === 'wash' && !asksWet && step.paper !== 'bone dry') {
      return [badPaper(step, { say: 'paper/damp' })];
    }
    if ((step.technique === 'wet-in-wet') === asksWet) return [];
    return [badPaper(step, asksWet ? { say: 'paper/wet' } : { say: 'paper/dry' })];
  });

const badPaper = (step: Step, sentence: Said): BrokenRule =>
  broken('R5', step, `${step.key} is ${step.technique} on ${step.paper} paper`, sentence);

/** R5: a darker value over a lighter one wants it dry; in one go they run into each other. */
export const valuesInSeparateWashes: Check = (plan) =>
  plan.steps.flatMap((step): BrokenRule[] => {
    if (step.kind !== 'wash') return [];
    const rows = mixesOfStep(plan, step);
    const families = new Set(rows.map(({ passage, family }) => `${passage}/${family}`));
    if (families.size === rows.length) return [];
    const thinner = rows.some((row) =>
      rows.some(
        (later) => later.wash > row.wash && later.family === row.family && later.load < row.load,
      ),
    );
    return [
      broken(
        'R5',
        step,
        `${step.key} lays two washes at once`,
        thinner ? { say: 'one-go/thinner' } : { say: 'one-go/runs' },
      ),
    ];
  });

/** Deliberately looser than the planner's thresholds, so that the planner's own plans never fail (own). */
const mostlyHard = 0.35;
const mostlySoft = 0.65;

/** Wet paper makes soft edges and dry paper hard ones: the borders of a wash ask for one of them. */
export const edgesByTechnique: Check = (plan, { borders }) => {
  if (!borders) return [];
  const begun = new Set<string>();
  return washesOf(plan).flatMap((step): BrokenRule[] => {
    const first = !begun.has(passageOf(step));
    begun.add(passageOf(step));
    const outer = outerBorders({ borders }, step.slots);
    if (!outer.some(({ lengthMm }) => lengthMm > 0)) return [];
    const soft = softShare(outer);
    const wet = step.technique === 'wet-in-wet';
    const sentence: Said | null =
      wet && soft < mostlyHard
        ? { say: 'edges/crisp-on-wet' }
        : !wet && first && soft > mostlySoft
          ? { say: 'edges/soft-on-dry' }
          : null;
    return sentence ? [broken('edges', step, `${step.key} is ${step.technique}`, sentence)] : [];
  });
};

/** A glaze is thin: what lies below shines through it. */
export const thinGlaze: Check = (plan) =>
  washesOf(plan).flatMap((step): BrokenRule[] => {
    if (step.technique !== 'glaze') return [];
    const rows = plan.mixes.filter(({ id }) => step.mixes.includes(id));
    if (!rows.some(({ load }) => load >= creamFrom)) return [];
    return [broken('R10', step, `${step.key} glazes with thick paint`, { say: 'glaze/thick' })];
  });

function liftSentence(stains: readonly (number | null)[]): Said | null {
  if (stains.length === 0) return { say: 'lift/nothing' };
  return stains.some((stain) => stain !== 0) ? { say: 'lift/stains' } : null;
}

/** R11: only what lifts is lifted, when no wash closes it again. */
export const liftWhatLifts: Check = (plan) =>
  plan.steps.flatMap((step, n): BrokenRule[] => {
    if (step.kind !== 'lift') return [];
    const sentence = liftSentence(stainsOf(plan, mixesUnderStep(plan, step)));
    const later = washesOf({ ...plan, steps: plan.steps.slice(n + 1) });
    return [
      ...(sentence ? [broken('R11', step, `${step.key} lifts what does not lift`, sentence)] : []),
      ...(later.some((wash) => overlap(wash, step))
        ? [broken('R17', step, `${step.key} before a wash over it`, { say: 'lift/closed' })]
        : []),
    ];
  });

/** R16: only paint that does not lift is wetted again. */
export const wetAgain: Check = (plan) =>
  washesOf(plan).flatMap((step): BrokenRule[] => {
    if (step.technique !== 'wet-in-wet') return [];
    if (!stainsOf(plan, mixesUnderStep(plan, step)).includes(0)) return [];
    return [broken('R16', step, `${step.key} wets paint that lifts`, { say: 'wet/again' })];
  });

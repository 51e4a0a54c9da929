import { creamFrom } from '../../paint/consistency.ts';
import { outerBorders, softShare } from '../../reading/edges/slot-borders.ts';
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

const onWet: Record<Exclude<StepKind, 'wash' | 'dry'>, string> = {
  prepare: 'The sheet is moved while it is wet: the paint runs.',
  puddles: 'The sheet is not left to dry by itself: keep your hands off it meanwhile.',
  transfer: 'A pencil on damp paper cuts into it, and the line stays.',
  mask: 'On damp paper the masking fluid soaks in and tears the sheet when it comes off.',
  unmask: 'Rubbed off a damp sheet the mask tears the paper.',
  lift: 'The sheet is still damp: what you wet runs back in with a cauliflower (backrun).',
  splatter: 'The sheet is still wet: the spots spread into soft blots.',
  details: 'The sheet is still wet: small shapes spread and lose their form.',
  accents: 'The sheet is still wet: these touches run and dry pale and soft.',
  'last-lights': 'The sheet is still damp: the white sinks in and goes grey.',
  'last-look': 'Wet paint looks darker than it dries: what you judge now is not what you get.',
};

const mostLoad = (plan: RuledPlan, step: Step): number =>
  Math.max(0, ...mixesOfStep(plan, step).map(({ load }) => load));

/** Into a wet wash only thicker paint may go (R6): the thinner one pushes it away. */
function washOnWet(plan: RuledPlan, step: Step, wet: Step): string {
  return mostLoad(plan, step) < mostLoad(plan, wet)
    ? 'Thin paint goes into a wash that is not dry: it pushes the colour away in cauliflowers (backruns).'
    : 'It goes into a wash that is not dry: colours run together, edges are lost, and it turns to mud.';
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
      return [
        badPaper(step, 'On damp paper paint runs unevenly and leaves cauliflowers (backruns).'),
      ];
    }
    if ((step.technique === 'wet-in-wet') === asksWet) return [];
    return [
      badPaper(
        step,
        asksWet
          ? 'On wet paper this paint spreads: no edge stays where you put it.'
          : 'On dry paper the colours do not run: every stroke keeps a hard edge.',
      ),
    ];
  });

const badPaper = (step: Step, sentence: string): BrokenRule =>
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
        thinner
          ? 'In one go the second colour is the wetter one: it pushes the first away in cauliflowers (backruns).'
          : 'In one go the darker colours run into the lighter ones: no crisp edge stays between them.',
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
    const sentence =
      wet && soft < mostlyHard
        ? 'On wet paper the crisp edges of these shapes run and come out soft.'
        : !wet && first && soft > mostlySoft
          ? 'Most edges here are soft: on dry paper they dry hard unless you soften each one at once.'
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
    return [
      broken(
        'R10',
        step,
        `${step.key} glazes with thick paint`,
        'Paint this thick covers like a skin: nothing below shines through the glaze.',
      ),
    ];
  });

function liftSentence(stains: readonly (number | null)[]): string | null {
  if (stains.length === 0) return 'There is no paint to lift here yet.';
  return stains.some((stain) => stain !== 0)
    ? 'Staining paint lies here: it only gets paler in patches and does not come out.'
    : null;
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
        ? [
            broken(
              'R17',
              step,
              `${step.key} before a wash over it`,
              'A wash still goes over the lifted lights and closes them again.',
            ),
          ]
        : []),
    ];
  });

/** R16: only paint that does not lift is wetted again. */
export const wetAgain: Check = (plan) =>
  washesOf(plan).flatMap((step): BrokenRule[] => {
    if (step.technique !== 'wet-in-wet') return [];
    if (!stainsOf(plan, mixesUnderStep(plan, step)).includes(0)) return [];
    return [
      broken(
        'R16',
        step,
        `${step.key} wets paint that lifts`,
        'Wetting it again loosens the paint below, which lifts easily: it goes patchy.',
      ),
    ];
  });

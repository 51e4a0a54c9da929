import type { Step, StepKind } from '../../../../app/model/wash-plan.ts';
import {
  type BrokenRule,
  broken,
  type Check,
  leavesWet,
  type RuledPlan,
  rowsOf,
} from './broken-rule.ts';

const onWet: Record<Exclude<StepKind, 'wash' | 'dry'>, string> = {
  prepare: 'The sheet is moved while it is wet: the paint runs.',
  puddles: 'The sheet is not left to dry by itself: keep your hands off it meanwhile.',
  transfer: 'A pencil on damp paper cuts into it, and the line stays.',
  mask: 'On damp paper the masking fluid soaks in and tears the sheet when it comes off.',
  unmask: 'Rubbed off a damp sheet the mask tears the paper.',
  lift: 'The sheet is still damp: what you wet runs back in with a cauliflower (backrun).',
  splatter: 'The sheet is still wet: the spots spread into soft blots.',
  accents: 'The sheet is still wet: these touches run and dry pale and soft.',
  'last-lights': 'The sheet is still damp: the white sinks in and goes grey, a blade tears it.',
  'last-look': 'Wet paint looks darker than it dries: what you judge now is not what you get.',
};

const mostLoad = (plan: RuledPlan, step: Step): number =>
  Math.max(0, ...rowsOf(plan, step).map(({ load }) => load));

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
    if (!under || step.kind === 'dry') return [];
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
export const valuesApart: Check = (plan) =>
  plan.steps.flatMap((step): BrokenRule[] => {
    if (step.kind !== 'wash') return [];
    const rows = rowsOf(plan, step);
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

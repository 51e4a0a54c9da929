import { dryPrompt } from '../../../app/model/drying/bone-dry-sign.ts';
import { estimateDrying } from '../../../app/model/drying/estimate-drying.ts';
import { waterOf } from '../../../app/model/drying/water-of.ts';
import type { PlanFacts } from './plan-facts.ts';
import { quietStep, type StepDraft } from './step-draft.ts';

/** The key of the drying check that waits for the step with key `after`. */
export const dryKeyOf = (after: string): string => `dry/${after.replace(/^wash\//, '')}`;

/** The check that the sheet is bone dry after the step with key `after`: nothing else is done. */
export function dryStep(facts: PlanFacts, after: string): StepDraft {
  const { weather, paper } = facts;
  const { coolTestWorks } = estimateDrying({
    waterGramsPerSquareMetre: waterOf.wash,
    weather,
    paperGsm: paper.gsm,
  });
  return {
    ...quietStep,
    key: dryKeyOf(after),
    kind: 'dry',
    title: 'Drying check',
    prompt: coolTestWorks ? dryPrompt.usual : dryPrompt.slow,
    watch: 'Damp is the dangerous state: no water, no thin paint now.',
    paper: 'damp',
    // With a hair dryer the sheet has to cool before it can be felt (R14).
    paintMinutes: weather.hairDryer ? [3, 5] : [1, 2],
    cautions: [
      'Hair dryer only once the shine has gone, away from the water jar and wet hands. Then let the sheet cool 2 to 3 minutes before you feel it.',
    ],
    rules: ['R5', 'R7', 'R14'],
  };
}

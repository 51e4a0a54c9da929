import { waterOf } from '../../../app/model/drying/water-of.ts';
import type { Step } from '../../../app/model/wash-plan.ts';
import { waterKindOf } from '../../../app/model/water-kind.ts';
import { paperFixing } from './paper-fixing.ts';
import type { PlanFacts } from './plan-facts.ts';
import { minutesOnSheet } from './sheet-pace.ts';

/** Water a step puts down, g/m2; 0 where it wets nothing. */
function waterGrams(step: Step): number {
  const kind = waterKindOf(step);
  return step.waterGramsPerSquareMetre ?? (kind ? waterOf[kind] : 0);
}

/** The steps as they stand at last, the first of them with how the sheet is held for the wettest of them. */
export function preparedSteps(facts: PlanFacts, steps: readonly Step[]): Step[] {
  const mostWater = Math.max(0, ...steps.map(waterGrams));
  const { how, mind, minutes } = paperFixing(facts.paper, facts.weather, mostWater);
  return steps.map((step) =>
    step.kind === 'prepare'
      ? {
          ...step,
          prompt: `${how} Set out two jars of water, scraps of the same paper and what is listed.`,
          watch: mind,
          paintMinutes: minutesOnSheet(facts, minutes),
        }
      : step,
  );
}

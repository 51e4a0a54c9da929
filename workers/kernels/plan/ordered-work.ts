import type { PlanEdit } from '../../../app/model/plan-edit.ts';
import type { Mix, Step, WashPlan } from '../../../app/model/wash-plan.ts';
import { defaultPaperLab } from '../optics/default-paper.ts';
import { mixNotes } from './mix-notes.ts';
import { orderSteps } from './order-steps.ts';
import type { PlanFacts } from './plan-facts.ts';

/** The mixes and the steps of a plan, in order. */
export interface OrderedWork {
  readonly mixes: readonly Mix[];
  readonly steps: readonly Step[];
  readonly leftOut: NonNullable<WashPlan['leftOut']>;
}

/** The work of a solved plan as the rules order it, with her changes. */
export function orderedWork(facts: PlanFacts, _edits: readonly PlanEdit[] = []): OrderedWork {
  const { passages, reading, slots, paints } = facts;
  const mixes = passages.flatMap(({ washes }) => washes.flatMap((wash) => wash.mixes));
  return {
    mixes: mixNotes(mixes, reading, slots, paints),
    steps: orderSteps(facts, defaultPaperLab),
    leftOut: [],
  };
}

import type { Mix, Step } from '../../../app/core/plan/plan.ts';
import type { RuledPlan } from '../../../app/core/plan/rules/broken-rule.ts';
import type { Slot } from '../../../app/core/reading/slot.ts';
import { plainStep } from '../session/plain-step.ts';
import { madeReading, tableOf } from './made-reading.ts';

type MadeStep = Partial<Step> & Pick<Step, 'key'>;
type MadeMix = Pick<Mix, 'id' | 'wash'> & Partial<Mix>;

const [plainSlot] = madeReading(tableOf([50], [[0, 0]])).slots;

const kindOf = (key: string): Step['kind'] => key.split('/')[0] as Step['kind'];

/** As much of a plan as the rules read: steps by key (the kind is its first word), slots and mixes with what counts. */
export function ruledPlan(
  steps: readonly MadeStep[],
  slots: readonly Partial<Slot>[] = [],
  mixes: readonly MadeMix[] = [],
): RuledPlan {
  return {
    paper: [95, 0, 2],
    optics: [],
    slots: slots.map((slot) => ({ ...(plainSlot as Slot), passage: 'sheet', ...slot })),
    mixes: mixes.map((mix) => ({
      puddle: 'a',
      passage: 'sheet',
      family: 1,
      parts: [{ paint: 'p', parts: 1 }],
      load: 1,
      consistency: 'tea',
      target: null,
      expected: [50, 0, 0],
      expectedWet: [45, 0, 0],
      ...mix,
    })),
    steps: steps.map((step, i) => ({ ...plainStep(i + 1), kind: kindOf(step.key), ...step })),
  };
}

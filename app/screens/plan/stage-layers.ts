import { type Layer, softLayer, withoutHue } from '../../drawing/layers.ts';
import type { Lab } from '../../model/lab.ts';
import type { SoftBlend } from '../../model/soft-blend.ts';
import { stepChanges } from '../../model/step-changes.ts';
import type { WashPlan } from '../../model/wash-plan.ts';
import { wetAfter } from '../../model/wet-after.ts';
import type { Seen } from '../../state/seen.ts';
import { type StepView, stepLayers } from '../common/step-layers.ts';

/** What the picture of a stage can show beside the views of a step; each also in grey. */
export type StageView = StepView | 'wet' | 'changes';

/** The wall round the picture, L*; so much of it lies over what stays as it was. */
const wall: Lab = [56, 0, 0];
const veil = 0.85;

const dimmed = (lab: Lab): Lab => [
  lab[0] + veil * (wall[0] - lab[0]),
  lab[1] * (1 - veil),
  lab[2] * (1 - veil),
];

/** All layers of one stage of a plan: those of its step, the sheet while it is wet, and what the step changes. */
export function stageLayers(
  seen: Seen,
  plan: WashPlan,
  index: number,
  soft: SoftBlend | null,
): Record<string, Layer> {
  const step = plan.steps[index];
  if (!step) return {};
  const wet = wetAfter(plan, step);
  const { slots } = stepChanges(plan, index);
  const changes = step.after.map((lab, i) => (slots.has(i) ? lab : dimmed(lab)));
  return {
    ...stepLayers(seen, step, soft),
    wet: softLayer(seen.slotMap, soft, wet),
    'wet-grey': softLayer(seen.slotMap, soft, withoutHue(wet)),
    changes: softLayer(seen.slotMap, null, changes),
    'changes-grey': softLayer(seen.slotMap, null, withoutHue(changes)),
  };
}

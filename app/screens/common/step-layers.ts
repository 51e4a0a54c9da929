import {
  bitmapLayer,
  type Layer,
  softLayer,
  whereLayer,
  withoutHue,
} from '../../drawing/layers.ts';
import type { SoftBlend } from '../../model/soft-blend.ts';
import type { Step } from '../../model/wash-plan.ts';
import type { Seen } from '../../state/seen.ts';

/** What the picture of a step can show; each also in grey. */
export const stepViews = ['reference', 'sheet', 'where'] as const;
export type StepView = (typeof stepViews)[number];

/** L* 56 as an sRGB code: the surround, so that what is not touched falls back into the wall. */
const dimTo = 134;

/** Name of the layer that shows `view`, in grey or not. */
export const stepLayer = (view: StepView, grey: boolean): string => (grey ? `${view}-grey` : view);

/**
 * All layers of one step: the reference, the sheet after the step with its soft edges soft (crisp until
 * they are worked out), and where the step works.
 */
export function stepLayers(seen: Seen, step: Step, soft: SoftBlend | null): Record<string, Layer> {
  const where = new Set(step.slots);
  const colour = bitmapLayer(seen.reference);
  const grey = bitmapLayer(seen.grey);
  return {
    reference: colour,
    'reference-grey': grey,
    sheet: softLayer(seen.slotMap, soft, step.after),
    'sheet-grey': softLayer(seen.slotMap, soft, withoutHue(step.after)),
    where: whereLayer(colour, seen.slotMap, where, dimTo),
    'where-grey': whereLayer(grey, seen.slotMap, where, dimTo),
  };
}

import { ownMarks } from '../../core/plan/details/place-marks.ts';
import type { Step, WashPlan } from '../../core/plan/plan.ts';
import { type WashPlace, washPlaces } from '../../core/plan/runs/wash-places.ts';
import type { SoftBlend } from '../../core/raster/paint-slots.ts';
import {
  bitmapLayer,
  type Layer,
  type SheetMap,
  sheetLayer,
  wallGrey,
  whereLayer,
  whereMarksLayer,
} from '../../drawing/layers.ts';
import { pointedLayer } from '../../drawing/shapes-layer.ts';
import type { OpenedReading } from '../../state/painting/opened-reading.ts';

/** What the picture of a step can show; each also in grey. */
const stepViews = ['reference', 'sheet', 'where'] as const;
export type StepView = (typeof stepViews)[number];

/** Name of the layer that shows `view`, in grey or not. */
export const stepLayer = (view: string, grey: boolean): string => (grey ? `${view}-grey` : view);

export const sheetMapOf = (
  { slotMap, reading: { squares, details } }: Pick<OpenedReading, 'slotMap' | 'reading'>,
  soft: SoftBlend | null,
): SheetMap => ({ slotMap, ...(squares && { squares }), ...(details && { details }), soft });

/**
 * All layers of one step: the reference, the sheet after the step with its soft edges soft (crisp until
 * they are worked out), and where the step works: its largest shapes in their turn, and the puddles.
 */
export function stepLayers(
  seen: OpenedReading,
  plan: Pick<WashPlan, 'mixes' | 'runs'>,
  step: Step,
  soft: SoftBlend | null,
): Record<string, Layer> {
  const where = new Set(step.slots);
  const { slots, raster, squares } = seen.reading;
  let found: WashPlace[] | null = null;
  const places = (): WashPlace[] => {
    found ??= washPlaces(step, plan, {
      slots,
      raster,
      slotMap: seen.slotMap,
      ...(squares && { squares }),
    });
    return found;
  };
  const sheet = sheetMapOf(seen, soft);
  const { details } = seen.reading;
  const small = details ? ownMarks(step).map(({ shape }) => shape) : [];
  const whereIn = (under: Layer): Layer =>
    details && small.length > 0
      ? whereMarksLayer(under, details, small, wallGrey)
      : pointedLayer(whereLayer(under, seen.slotMap, where, wallGrey), places);
  const colour = bitmapLayer(seen.reference);
  const grey = bitmapLayer(seen.grey);
  return {
    reference: colour,
    'reference-grey': grey,
    sheet: sheetLayer(sheet, step),
    'sheet-grey': sheetLayer(sheet, step, true),
    where: whereIn(colour),
    'where-grey': whereIn(grey),
  };
}

import { markOfStep } from '../../core/plan/details/place-marks.ts';
import { mostPointedAt } from '../../core/plan/evening/evening-times.ts';
import type { Step } from '../../core/plan/plan.ts';
import { largestShapes, type ShapePlace } from '../../core/raster/largest-shapes.ts';
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

/** Steps that go over all of the sheet, or over none of it, point at nothing. */
const pointsAt = ({ kind }: Step): boolean => kind !== 'transfer' && kind !== 'last-look';

/**
 * The largest shapes a step works at, at most seven: what is painted from one mix and touches is one shape, as the
 * mixes run over lighter and darker values; each kept white is one by itself.
 */
export function shapesPointedAt({ reading, slotMap }: OpenedReading, step: Step): ShapePlace[] {
  if (!pointsAt(step)) return [];
  const names: string[] = [];
  // A wash over the whole sheet paints ground and subject from the same mixes.
  const asOne = step.kind === 'wash' && step.key.split('/')[1] === 'sheet';
  const kindOf = (index: number): number => {
    const slot = reading.slots[index];
    if (!slot || !step.slots.includes(index)) return -1;
    const passage = asOne ? 'sheet' : slot.passage;
    const name = slot.reserve ? 'white' : `${passage}/${slot.family}`;
    if (!names.includes(name)) names.push(name);
    return names.indexOf(name);
  };
  return largestShapes(slotMap, reading.raster, kindOf, mostPointedAt);
}

export const sheetMapOf = (
  { slotMap, reading: { squares, details } }: Pick<OpenedReading, 'slotMap' | 'reading'>,
  soft: SoftBlend | null,
): SheetMap => ({ slotMap, ...(squares && { squares }), ...(details && { details }), soft });

/** The shapes a step sets marks on: those on the sheet after it that no step before has set. */
const ownShapes = ({ kind, marks = [] }: Step): number[] =>
  marks.flatMap((mark) => (mark.kind === markOfStep[kind] ? [mark.shape] : []));

/**
 * All layers of one step: the reference, the sheet after the step with its soft edges soft (crisp until
 * they are worked out), and where the step works, its largest shapes numbered: big before small (R3).
 */
export function stepLayers(
  seen: OpenedReading,
  step: Step,
  soft: SoftBlend | null,
): Record<string, Layer> {
  const where = new Set(step.slots);
  let found: ShapePlace[] | null = null;
  const shapes = (): ShapePlace[] => {
    found ??= shapesPointedAt(seen, step);
    return found;
  };
  const sheet = sheetMapOf(seen, soft);
  const { details } = seen.reading;
  const small = details ? ownShapes(step) : [];
  const whereIn = (under: Layer): Layer =>
    details && small.length > 0
      ? whereMarksLayer(under, details, small, wallGrey)
      : pointedLayer(whereLayer(under, seen.slotMap, where, wallGrey), shapes);
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

import { useSignal } from '@preact/signals';
import type { Lab } from '../../core/colour/lab.ts';
import type { Outline } from '../../core/outline/outline.ts';
import { wetLook } from '../../core/paint/mix-words.ts';
import { coloursWhileWet, lookWhileWet, mapLook } from '../../core/plan/colours-while-wet.ts';
import type { WashPlan } from '../../core/plan/plan.ts';
import { stepChanges } from '../../core/plan/step-changes.ts';
import type { SoftBlend } from '../../core/raster/paint-slots.ts';
import type { PixelSize } from '../../core/raster/size.ts';
import { hasNoBeginning } from '../../core/session/easel-time.ts';
import { capitalize } from '../../core/words/numbers.ts';
import { changesInWords } from '../../core/words/plan/beside.ts';
import { type Layer, sheetLayer } from '../../drawing/layers.ts';
import { drawingLayer } from '../../drawing/line-layers.ts';
import type { OpenedReading } from '../../state/painting/opened-reading.ts';
import { Picture } from '../../ui/picture/picture.tsx';
import { type StepView, sheetMapOf, stepLayer, stepLayers } from '../../ui/picture/step-layers.ts';

interface StagePictureProps {
  label: string;
  size: PixelSize;
  layers: Readonly<Record<string, Layer>>;
  /** What is shown; each also in grey. */
  view: string;
}

/** The picture of a stage: a tap for grey, which nothing round it has to follow. */
export function StagePicture({ label, size, layers, view }: StagePictureProps) {
  const grey = useSignal(false);
  return (
    <Picture
      label={label}
      tapLabel={grey.value ? 'Tap for colour' : 'Tap for grey'}
      size={size}
      layers={layers}
      show={stepLayer(view, grey.value)}
      tapShows={stepLayer(view, !grey.value)}
      onTap={() => {
        grey.value = !grey.value;
      }}
    />
  );
}

/** What the picture of a stage can show beside the views of a step; each also in grey. */
export type StageView = StepView | 'wet' | 'changes';

/** The wall round the picture, L*; so much of it lies over what stays as it was. */
const wall: Lab = [56, 0, 0];
const veil = 0.85;

const dim = (lab: Lab): Lab => [
  lab[0] + veil * (wall[0] - lab[0]),
  lab[1] * (1 - veil),
  lab[2] * (1 - veil),
];

/** What is worked out after the plan stands; null until then. */
interface WorkedOut {
  readonly soft: SoftBlend | null;
  readonly outline: Outline | null;
}

/**
 * All layers of one stage of a plan: those of its step, with the drawing where it is transferred, the sheet while it is
 * wet, and what the step changes.
 */
export function stageLayers(
  seen: OpenedReading,
  plan: WashPlan,
  index: number,
  { soft, outline }: WorkedOut,
): Record<string, Layer> {
  const step = plan.steps[index];
  if (!step) return {};
  const sheet = sheetMapOf(seen, soft);
  const crisp = sheetMapOf(seen, null);
  const { slots, marks } = stepChanges(plan, index);
  const rows = seen.reading.squares?.slots;
  const wet = { ...lookWhileWet(plan, step, rows), ...(step.marks && { marks: step.marks }) };
  const changes = {
    ...mapLook(step, rows, (lab, slot) => (slots.has(slot) ? lab : dim(lab))),
    marks,
  };
  const pencilled = (layer: Layer): Layer =>
    step.kind === 'transfer' && outline ? drawingLayer(layer, outline) : layer;
  return {
    ...stepLayers(seen, plan, step, soft),
    sheet: pencilled(sheetLayer(sheet, step)),
    'sheet-grey': pencilled(sheetLayer(sheet, step, true)),
    wet: sheetLayer(sheet, wet),
    'wet-grey': sheetLayer(sheet, wet, true),
    changes: sheetLayer(crisp, changes),
    'changes-grey': sheetLayer(crisp, changes, true),
  };
}

const nothingPainted = 'Nothing is painted in this step.';

/** How much darker the wet sheet looks, by the largest shapes of the step. */
function wetInWords(plan: WashPlan, index: number): string {
  const step = plan.steps[index];
  const [largest] = [...(step?.slots ?? [])].sort(
    (one, two) => (plan.slots[two]?.share ?? 0) - (plan.slots[one]?.share ?? 0),
  );
  const dry = largest === undefined ? undefined : step?.after[largest];
  if (step?.kind !== 'wash' || largest === undefined || !dry) {
    return nothingPainted;
  }
  const wet = coloursWhileWet(plan, step)[largest] ?? dry;
  const words = wetLook(dry, wet);
  return `${capitalize(words)} in the largest shapes: judge it dry.`;
}

/** What is to be known of a view of a stage; empty where it speaks for itself. */
export function describeStage(plan: WashPlan, index: number, view: StageView): string {
  if (view === 'wet') return wetInWords(plan, index);
  if (view === 'changes') return changesInWords(stepChanges(plan, index));
  const step = plan.steps[index];
  if (view !== 'where' || !step) return '';
  if (hasNoBeginning(step) || step.kind === 'dry') return nothingPainted;
  return stepChanges(plan, index).marks.length > 0
    ? 'What is to be set stays in sight; the rest is dimmed.'
    : 'The tags say what comes first, from which puddle: big before small.';
}

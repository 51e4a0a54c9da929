import type { Lab } from '../../../app/model/lab.ts';
import type { Reading } from '../../../app/model/reading.ts';
import { type PlanWishes, planEngine, type WashPlan } from '../../../app/model/wash-plan.ts';
import { defaultPaperLab } from '../optics/default-paper.ts';
import { darkestBandLightness, paletteTargets } from '../palette/palette-target.ts';
import { searchPalette } from '../palette/search-palette.ts';
import { orderedWork } from './ordered-work.ts';
import { paletteEntries } from './palette-entries.ts';
import type { PlanCheckpoint } from './plan-checkpoint.ts';
import { planId } from './plan-id.ts';
import { colourWarning, darkWarning, nothingToPaint, valueWarning } from './plan-warnings.ts';
import { plannedSlots } from './planned-slots.ts';
import { solvePalette } from './solve-palette.ts';

/**
 * The wash plan for a reading: a palette searched among her paints, mixes solved wash over wash, and the
 * steps in order by rule. Deterministic. Whatever the reading holds there is a plan, or one without
 * steps that says there is nothing to paint. Throws RangeError with a sentence for her where her wishes
 * contradict each other, and whatever `checkpoint` throws.
 */
export async function buildWashPlan(
  reading: Reading,
  asked: PlanWishes,
  checkpoint: PlanCheckpoint,
): Promise<WashPlan> {
  const planned = await plannedSlots(reading, asked, checkpoint);
  const { wishes, known, wide } = planned;
  const empty = {
    schema: 1,
    id: planId({ reading, wishes: asked, planEngine }),
    engine: planEngine,
    paper: defaultPaperLab,
  } as const;
  const targets = paletteTargets(wide.slots);
  const noSteps = { ...empty, palette: [], optics: [], mixes: [], steps: [] };
  if (targets.length === 0) {
    return { ...noSteps, ...wide, warnings: [nothingToPaint] };
  }
  const found = await searchPalette(wide.slots, known, wishes, (part) =>
    checkpoint(0.1 + 0.4 * part, 'paints'),
  );
  const { reached, range, facts } = await solvePalette(reading, planned, found.paints, checkpoint);
  const { slots, passages } = facts;
  const onePaint = found.paints.length === 1;
  const tooLight = darkWarning(reached, darkestBandLightness(targets), onePaint);
  if (passages.length === 0) {
    // Paints so pale that nothing they do stands off the paper.
    return { ...noSteps, range, slots, warnings: [tooLight ?? nothingToPaint] };
  }
  const { mixes, steps, leftOut } = orderedWork(facts, wishes.edits);
  const last: readonly Lab[] = steps.at(-1)?.after ?? [];
  const off = wishes.colours ? valueWarning(facts, slots, last) : colourWarning(facts, slots, last);
  const warnings = [tooLight, off].filter((warning) => warning !== null);
  return {
    ...empty,
    range,
    slots,
    palette: paletteEntries(facts),
    optics: facts.paints,
    mixes,
    steps,
    warnings,
    ...(leftOut.length > 0 && { leftOut }),
  };
}

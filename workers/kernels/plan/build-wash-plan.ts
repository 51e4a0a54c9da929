import type { PlanWishes } from '../../../app/model/plan-wishes.ts';
import type { Reading } from '../../../app/model/reading.ts';
import { planEngine, type WashPlan } from '../../../app/model/wash-plan.ts';
import { defaultPaperLab } from '../optics/default-paper.ts';
import { darkestOf } from '../palette/darkest-of.ts';
import { darkestBandLightness, paletteTargets } from '../palette/palette-target.ts';
import { searchPalette } from '../palette/search-palette.ts';
import { fitEvening } from './evening/fit-evening.ts';
import { proposeWashes } from './evening/propose-washes.ts';
import { washSolver } from './evening/wash-solver.ts';
import { paletteEntries } from './palette-entries.ts';
import { passageOrder } from './passage-order.ts';
import type { PlanCheckpoint } from './plan-checkpoint.ts';
import { planId } from './plan-id.ts';
import { createPlanMemory, type PlanMemory, paletteAsked } from './plan-memory.ts';
import { darkWarning, nothingToPaint } from './plan-warnings.ts';
import { plannedSlots } from './planned-slots.ts';
import { reachWarnings } from './reach/reach-warnings.ts';

/**
 * The wash plan for a reading: a palette searched among her paints, mixes solved wash over wash, and the
 * steps in order by rule. Deterministic. Whatever the reading holds there is a plan, or one without
 * steps that says there is nothing to paint. Throws RangeError with a sentence for her where her wishes
 * contradict each other, and whatever `checkpoint` throws. `memory` spares what an earlier plan found out.
 */
export async function buildWashPlan(
  reading: Reading,
  asked: PlanWishes,
  checkpoint: PlanCheckpoint,
  memory: PlanMemory = createPlanMemory(),
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
  const asking = paletteAsked(wide.slots, known, wishes);
  const found =
    memory.palettes.get(asking) ??
    (await searchPalette(wide.slots, known, wishes, (part) =>
      checkpoint(0.1 + 0.4 * part, 'paints'),
    ));
  memory.palettes.keep(asking, found);
  const solve = washSolver(reading, planned, found.paints, checkpoint, memory);
  const planTargets = planned.forDarkest(darkestOf(found.paints)).slots;
  const proposed = await proposeWashes(planTargets, reading.bands.length, wishes, solve);
  const { solved, work, washesWhy, fit } = await fitEvening(proposed, wishes, solve);
  const { reached, range, facts } = solved;
  const { slots, passages } = facts;
  const wanted = darkestBandLightness(targets);
  const onePaint = found.paints.length === 1;
  if (passages.length === 0) {
    // Paints so pale that nothing they do stands off the paper.
    const tooLight = darkWarning(reached, wanted, onePaint);
    return { ...noSteps, range, slots, warnings: [tooLight ?? nothingToPaint] };
  }
  const { mixes, steps, leftOut, stepsWhy } = work;
  const { inPlan } = passageOrder(facts);
  const ownColours = wishes.colours !== undefined;
  const warnings = reachWarnings(facts, steps, { reached, wanted, onePaint, ownColours });
  return {
    ...empty,
    range,
    slots,
    palette: paletteEntries(facts),
    optics: facts.paints,
    mixes,
    steps,
    warnings,
    washesWhy,
    ...(inPlan && { passages: inPlan }),
    ...(stepsWhy && { stepsWhy }),
    ...(fit && { fit }),
    ...(leftOut.length > 0 && { leftOut }),
  };
}

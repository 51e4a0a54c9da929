import { drySurface } from '../colour/surface.ts';
import type { PlanWishes } from '../decisions/plan-wishes.ts';
import { numbersFingerprint, textFingerprint } from '../numeric/hash.ts';
import { defaultPaperLab } from '../paint/colour-of-washes.ts';
import { darkestOf } from '../palette/library/mix-library.ts';
import { darkestBandLightness, paletteTargets } from '../palette/search/palette-targets.ts';
import type { Reading } from '../reading/reading.ts';
import { fitEvening } from './evening/fit-evening.ts';
import { proposeWashes } from './evening/propose-washes.ts';
import { paletteEntries } from './palette-entries.ts';
import { planEngine, type WashPlan } from './plan.ts';
import { createPlanMemory, type PlanMemory } from './plan-memory.ts';
import { darkWarning, nothingToPaint } from './reach/colour-warnings.ts';
import { reachWarnings } from './reach/reach-warnings.ts';
import { runningSolver } from './runs/choose-puddles.ts';
import { runPlan, runsIn } from './runs/run-plan.ts';
import { choosePalette } from './solve/choose-palette.ts';
import { washSolver } from './solve/solve-palette.ts';
import { passageOrder } from './steps/passage-order.ts';
import { withCautions } from './steps/step-cautions.ts';
import { type PlanCheckpoint, plannedSlots } from './targets/planned-slots.ts';

/**
 * A name for a plan that depends only on what it was made from. Squares and details are many, and what they hold the
 * slots tell in sum; of edges the courses are most, and told by a fingerprint.
 */
function planId({ squares, details, edges = [], ...reading }: Reading, wishes: PlanWishes): string {
  const courses: number[] = [];
  for (const { path } of edges) {
    courses.push(path.length);
    for (const [x, y] of path) courses.push(x, y);
  }
  const kinds = edges.map(({ path, ...edge }) => Object.values(edge));
  const from = [reading, numbersFingerprint(courses), kinds, wishes, planEngine];
  return `plan-${textFingerprint(JSON.stringify(from))}`;
}

/**
 * The wash plan for a reading: a palette searched among her paints, mixes solved wash over wash, and the
 * steps in order by rule. Deterministic. Whatever the reading holds there is a plan, or one without
 * steps that says there is nothing to paint. Throws RangeError with a sentence for her where her wishes
 * contradict each other, and whatever `checkpoint` throws. `memory` spares what an earlier plan found out.
 */
export async function buildPlan(
  reading: Reading,
  asked: PlanWishes,
  checkpoint: PlanCheckpoint,
  memory: PlanMemory = createPlanMemory(),
): Promise<WashPlan> {
  const planned = await plannedSlots(reading, asked, checkpoint, memory.darkest);
  const { wishes, wide } = planned;
  const empty = {
    schema: 1,
    id: planId(reading, asked),
    engine: planEngine,
    paper: defaultPaperLab,
  } as const;
  const targets = paletteTargets(wide.slots);
  const noSteps = { ...empty, palette: [], optics: [], mixes: [], steps: [] };
  if (targets.length === 0) {
    return { ...noSteps, ...wide, warnings: [nothingToPaint] };
  }
  const found = await choosePalette(reading, planned, checkpoint, memory);
  const solve = washSolver(reading, planned, found.paints, checkpoint, memory);
  const planTargets = planned.forDarkest(darkestOf(found.paints)).slots;
  const proposed = await proposeWashes(planTargets, reading.bands.length, wishes, solve);
  const { solved, work, washesWhy, fit } = await fitEvening(
    proposed,
    wishes,
    runningSolver(solve, found.paints, wishes, memory),
  );
  const { reached, range, facts } = solved;
  const { slots, passages } = facts;
  const wanted = darkestBandLightness(targets);
  const onePaint = found.paints.length === 1;
  if (passages.length === 0) {
    // Paints so pale that nothing they do stands off the paper.
    const tooLight = darkWarning(reached, wanted, onePaint);
    return { ...noSteps, range, slots, warnings: [tooLight ?? nothingToPaint] };
  }
  const { leftOut, stepsWhy } = work;
  // Paints that the solve has no mix for may still run into one.
  const run = runPlan({ ...facts, paints: found.paints }, range, work, wishes, memory.runs);
  const paints = found.paints.filter(
    (paint) => facts.paints.includes(paint) || runsIn(paint, run.runs ?? []),
  );
  const { inPlan } = passageOrder(facts);
  const ownColours = wishes.colours !== undefined;
  const warnings = reachWarnings(facts, run.steps, { reached, wanted, onePaint, ownColours });
  return {
    ...empty,
    range,
    slots,
    palette: paletteEntries({ ...facts, paints }, run.runs),
    optics: paints,
    surface: drySurface,
    ...run,
    steps: withCautions(run.steps, { ...run, optics: paints, weather: facts.weather }),
    warnings,
    washesWhy,
    ...(inPlan && { passages: inPlan }),
    ...(stepsWhy && { stepsWhy }),
    ...(fit && { fit }),
    ...(leftOut.length > 0 && { leftOut }),
  };
}

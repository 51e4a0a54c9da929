import type { Lab } from '../../../app/model/lab.ts';
import type { Paint } from '../../../app/model/paint.ts';
import type { Reading, Slot, ToneRange } from '../../../app/model/reading.ts';
import type { Stage } from '../../../app/model/stage.ts';
import { reservesOf, retargeted, toneRange } from '../../../app/model/tone-range.ts';
import {
  type PlanWishes,
  planEngine,
  roomWeather,
  type WashPlan,
} from '../../../app/model/wash-plan.ts';
import { defaultPaperLab } from '../optics/default-paper.ts';
import { knownPaints } from '../optics/paint-box.ts';
import { darkestInSteps, darkestOf } from '../palette/darkest-of.ts';
import { paintsAllowed } from '../palette/paints-allowed.ts';
import { darkestBandLightness, paletteTargets } from '../palette/palette-target.ts';
import { searchPalette } from '../palette/search-palette.ts';
import { layeredSolve, type SolvedPassage } from './layered-solve.ts';
import { mixNotes } from './mix-notes.ts';
import { orderSteps } from './order-steps.ts';
import { paletteEntries } from './palette-entries.ts';
import type { PlanFacts } from './plan-facts.ts';
import { planId } from './plan-id.ts';
import { colourWarning, darkWarning, nothingToPaint, valueWarning } from './plan-warnings.ts';
import { PuddleNames } from './puddle-names.ts';
import { wishedColours } from './wished-colours.ts';
import { wishedPalette } from './wished-palette.ts';

/** The sheet's weight is not asked for yet: the trade's usual paper, g/m2. */
const usualPaperGsm = 300;
const proposedWashes = 3;
const proposedPuddles = 3;

/** Awaited between pieces of some milliseconds; throws to stop. part: 0..1 of the planning. */
export type PlanCheckpoint = (part: number, stage: Stage) => Promise<void>;

function whole(asked: number | undefined, proposed: number, most: number, what: string): number {
  const number = asked ?? proposed;
  if (!Number.isInteger(number) || number < 1 || number > most) {
    throw new RangeError(`${what}: choose a whole number from 1 to ${most}.`);
  }
  return number;
}

const rangeFor = ({ range }: Reading, darkest: number): ToneRange =>
  toneRange(range.mode, range.lo, range.hi, darkest, defaultPaperLab[0]);

/** L* of the darkest her box can do; whites and blacks count only if asked for. */
function boxDarkest(wishes: PlanWishes, checkpoint: PlanCheckpoint): Promise<number> {
  const { chosen, box, ownPaints, ...wanted } = wishes;
  const own = box && { box };
  const { paints } = paintsAllowed(
    knownPaints(ownPaints),
    chosen?.length ? { ...own } : { ...own, ...wanted },
  );
  return darkestInSteps(paints, (part) => checkpoint(0.1 * part, 'paints'));
}

async function solvePassages(
  reading: Reading,
  facts: Pick<PlanFacts, 'slots' | 'paints'>,
  wishes: PlanWishes,
  checkpoint: PlanCheckpoint,
): Promise<SolvedPassage[]> {
  const passages = [...new Set(reading.slots.map((slot) => slot.passage))];
  const input = {
    ...facts,
    washes: whole(wishes.washes, proposedWashes, 8, 'Washes over each other'),
    puddles: whole(wishes.puddlesPerWash, proposedPuddles, 8, 'Puddles in one wash'),
    names: new PuddleNames(),
  };
  const solved: SolvedPassage[] = [];
  for (const [n, passage] of passages.entries()) {
    solved.push(
      await layeredSolve(passage, input, (part) =>
        checkpoint(0.5 + (0.5 * (n + Math.min(1, part))) / passages.length, 'washes'),
      ),
    );
  }
  return solved.filter((passage) => passage.washes.length > 0);
}

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
  const wishes = wishedPalette(asked);
  const known = knownPaints(wishes.ownPaints);
  const slotsFor = (range: ToneRange): readonly Slot[] =>
    wishedColours(retargeted(reading.slots, range), reading.families, wishes.colours, known);
  const wideRange = rangeFor(reading, await boxDarkest(wishes, checkpoint));
  const wanted = slotsFor(wideRange);
  const empty = {
    schema: 1,
    id: planId({ reading, wishes: asked, planEngine }),
    engine: planEngine,
    paper: defaultPaperLab,
  } as const;
  const targets = paletteTargets(wanted);
  const noSteps = { ...empty, palette: [], optics: [], mixes: [], steps: [] };
  if (targets.length === 0) {
    return { ...noSteps, range: wideRange, slots: wanted, warnings: [nothingToPaint] };
  }
  const found = await searchPalette(wanted, known, wishes, (part) =>
    checkpoint(0.1 + 0.4 * part, 'paints'),
  );
  const reached = darkestOf(found.paints);
  const range = rangeFor(reading, reached);
  const slots = slotsFor(range);
  const passages = await solvePassages(
    reading,
    { slots, paints: found.paints },
    wishes,
    checkpoint,
  );
  const onePaint = found.paints.length === 1;
  const tooLight = darkWarning(reached, darkestBandLightness(targets), onePaint);
  if (passages.length === 0) {
    // Paints so pale that nothing they do stands off the paper.
    return { ...noSteps, range, slots, warnings: [tooLight ?? nothingToPaint] };
  }
  const facts: PlanFacts = {
    reading,
    slots,
    reserves: reservesOf(slots),
    paints: usedFirst(found.paints, passages, wishes),
    passages,
    weather: wishes.weather ?? roomWeather,
    paperGsm: usualPaperGsm,
  };
  const steps = orderSteps(facts, defaultPaperLab);
  const last: readonly Lab[] = steps.at(-1)?.after ?? [];
  const off = wishes.colours ? valueWarning(facts, slots, last) : colourWarning(facts, slots, last);
  const warnings = [tooLight, off].filter((warning) => warning !== null);
  return {
    ...empty,
    range,
    slots,
    palette: paletteEntries(facts),
    optics: facts.paints,
    mixes: mixNotes(
      passages.flatMap((passage) => passage.washes.flatMap((wash) => wash.mixes)),
      reading,
      slots,
      facts.paints,
    ),
    steps,
    warnings,
  };
}

/** A paint no mix needs is left out, unless she asked for it. */
function usedFirst(
  paints: readonly Paint[],
  passages: readonly SolvedPassage[],
  wishes: PlanWishes,
): Paint[] {
  const asked = new Set([...(wishes.must ?? []), ...(wishes.chosen ?? [])]);
  const used = new Set(
    passages.flatMap((passage) =>
      passage.washes.flatMap((wash) =>
        wash.mixes.flatMap((mix) => mix.parts.map((part) => part.paint)),
      ),
    ),
  );
  return paints.filter((paint) => used.has(paint.id) || asked.has(paint.id));
}

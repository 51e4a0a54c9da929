import type { Technique } from '../../decisions/plan-edit.ts';
import { creamFrom } from '../../paint/consistency.ts';
import { firstWashIsWet, outerBorders, softShare } from '../../reading/edges/slot-borders.ts';
import { areaCm2, type PlanFacts, paintsIn, type SolvedWash } from '../plan-facts.ts';
import {
  accentsStep,
  darkestSlots,
  detailsStep,
  lastLookStep,
  lastRows,
  liftStep,
  placesToLift,
  placesToSplatter,
  splatterStep,
} from './finishing-steps.ts';
import { passageOrder } from './passage-order.ts';
import { prepareStep, puddlesStep, transferStep } from './preparation-steps.ts';
import type { StepDraft } from './step-draft.ts';
import { lastLightsStep, type Masked, maskStep, unmaskStep, whitesToMask } from './white-steps.ts';

/** How she changed a wash: one go of two, two washes in one go, or one more layer of a mix. */
type WashChange = 'first go' | 'second go' | 'in one go' | 'once more';

/** A wash still to be put in its place: all that its step is made from. */
export interface WashWork {
  readonly kind: 'wash';
  readonly key: string;
  readonly passage: string;
  /** The wash with its mixes and slots; `after` is not used, nor are the bands of a changed wash. */
  readonly wash: SolvedWash;
  readonly technique: Technique;
  /** Left out: as planned. */
  readonly change?: WashChange;
  /** The wash it is a go of. */
  readonly whole?: SolvedWash;
}

/** Any other step, ready but for its place. */
interface OtherWork {
  readonly kind: 'other';
  readonly key: string;
  readonly draft: StepDraft;
}

export type PlanWork = WashWork | OtherWork;

export const otherWork = (draft: StepDraft): OtherWork => ({
  kind: 'other',
  key: draft.key,
  draft,
});

/**
 * Outer borders softer than this, by length, ask for wet paper also in a later wash: more than in a first
 * one, as it has to be wetted anew and dries for long (own).
 */
const softEnoughLater = 0.65;

/** Over this share of what was painted before, a later thin wash is a glaze (own). */
const glazeShare = 0.6;

/**
 * How a wash goes on: mostly soft outer borders ask for wet paper. A later wash goes on wetted paper
 * only if nothing under it lifts easily (R16); else it is dry and its edges are softened. A thin one over
 * most of the painted area is a glaze.
 */
function washTechnique(
  facts: PlanFacts,
  wash: SolvedWash,
  before: readonly SolvedWash[],
): Technique {
  if (before.length === 0) {
    return firstWashIsWet(facts.reading, wash.slots) ? 'wet-in-wet' : 'wet on dry';
  }
  const soft = softShare(outerBorders(facts.reading, wash.slots));
  const under = paintsIn(
    facts,
    before.flatMap((one) => one.mixes),
  );
  const lifts = under.some((paint) => paint.properties.staining === 0);
  if (soft > softEnoughLater && !lifts) return 'wet-in-wet';
  const covered =
    areaCm2(facts, wash.slots) / Math.max(1e-9, areaCm2(facts, before[0]?.slots ?? []));
  const thin = wash.mixes.every((mix) => mix.load < creamFrom);
  return thin && covered > glazeShare ? 'glaze' : 'wet on dry';
}

const plannedWashes = (facts: PlanFacts): WashWork[] =>
  passageOrder(facts).passages.flatMap(({ passage, washes }) =>
    washes.map((wash, n) => ({
      kind: 'wash' as const,
      key: `wash/${passage}/${wash.wash}`,
      passage,
      wash,
      technique: washTechnique(facts, wash, washes.slice(0, n)),
    })),
  );

function finishing(facts: PlanFacts, mask: Masked | null): StepDraft[] {
  const steps: StepDraft[] = [];
  if (mask) steps.push(unmaskStep(mask));
  const lift = placesToLift(facts);
  if (lift.length > 0) steps.push(liftStep(facts, lift));
  const splatter = placesToSplatter(facts);
  if (splatter.length > 0) steps.push(splatterStep(facts, splatter));
  const small = facts.reading.details?.shapes.filter(({ isLight }) => !isLight).length ?? 0;
  if (small > 0 && facts.passages.length > 0) steps.push(detailsStep(facts, small));
  const dark = darkestSlots(facts);
  // With one painted value there is no darkest touch to set.
  if (facts.passages.some((passage) => passage.washes.length > 1)) {
    steps.push(accentsStep(facts, dark, lastRows(facts, dark)));
  }
  const lights = lastLightsStep(facts);
  if (lights) steps.push(lights);
  steps.push(lastLookStep(facts));
  return steps;
}

/**
 * All there is to do in the order of the rules R1 to R21, drying checks apart: prepare, puddles, transfer, mask,
 * washes from light to dark, unmask, lifting, splatter, details, accents, last lights, last look.
 */
export function draftSteps(facts: PlanFacts): PlanWork[] {
  const washes = plannedWashes(facts);
  const mask = whitesToMask(
    facts,
    washes.some(({ technique }) => technique === 'wet-in-wet'),
  );
  const start = [prepareStep(facts), puddlesStep(facts), transferStep(facts)];
  if (mask) start.push(maskStep(mask));
  return [...start.map(otherWork), ...washes, ...finishing(facts, mask).map(otherWork)];
}

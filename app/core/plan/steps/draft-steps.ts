import type { Technique } from '../../decisions/plan-edit.ts';
import type { PlanFacts, SolvedWash } from '../plan-facts.ts';
import { type PlannedArea, wayOfWash } from '../techniques/wash-areas.ts';
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
  /** Where it is painted in two ways, the wet one first; left out: all as `technique` says. */
  readonly areas?: readonly PlannedArea[];
  /** Left out: as planned. */
  readonly change?: WashChange;
  /** The work it is a go of. */
  readonly whole?: WashWork;
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

const plannedWashes = (facts: PlanFacts): WashWork[] =>
  passageOrder(facts).passages.flatMap(({ passage, washes }) =>
    washes.map((wash, n) => ({
      kind: 'wash' as const,
      key: `wash/${passage}/${wash.wash}`,
      passage,
      wash,
      ...wayOfWash(facts, wash, washes.slice(0, n)),
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
    washes.some(({ technique, areas }) => technique === 'wet-in-wet' || areas),
  );
  const start = [prepareStep(facts), puddlesStep(facts), transferStep(facts)];
  if (mask) start.push(maskStep(mask));
  return [...start.map(otherWork), ...washes, ...finishing(facts, mask).map(otherWork)];
}

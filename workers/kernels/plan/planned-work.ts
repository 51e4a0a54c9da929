import { darkestSlots, placesToLift, placesToSplatter, rowsOver } from './finishing-places.ts';
import { accentsStep, lastLookStep, liftStep, splatterStep } from './finishing-steps.ts';
import { lastLightsStep } from './last-lights-step.ts';
import { type Masked, masked, maskStep, unmaskStep } from './mask-steps.ts';
import { passageOrder } from './passage-order.ts';
import type { PlanFacts } from './plan-facts.ts';
import { otherWork, type PlanWork, type WashWork } from './plan-work.ts';
import { prepareStep, puddlesStep, transferStep } from './preparing-steps.ts';
import type { StepDraft } from './step-draft.ts';
import { washTechnique } from './wash-technique.ts';

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

/** The last row each of some slots was painted with, every row once. */
export const lastRows = (facts: PlanFacts, slots: readonly number[]) => [
  ...new Set(slots.flatMap((i) => rowsOver(facts, i).at(-1) ?? [])),
];

function finishing(facts: PlanFacts, mask: Masked | null): StepDraft[] {
  const steps: StepDraft[] = [];
  if (mask) steps.push(unmaskStep(mask));
  const lift = placesToLift(facts);
  if (lift.length > 0) steps.push(liftStep(facts, lift));
  const splatter = placesToSplatter(facts);
  if (splatter.length > 0) steps.push(splatterStep(facts, splatter, lastRows(facts, splatter)));
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
 * washes from light to dark, unmask, lifting, splatter, accents, last lights, last look.
 */
export function plannedWork(facts: PlanFacts): PlanWork[] {
  const washes = plannedWashes(facts);
  const mask = masked(
    facts,
    washes.some(({ technique }) => technique === 'wet-in-wet'),
  );
  const start = [prepareStep(facts), puddlesStep(facts), transferStep(facts)];
  if (mask) start.push(maskStep(mask));
  return [...start.map(otherWork), ...washes, ...finishing(facts, mask).map(otherWork)];
}

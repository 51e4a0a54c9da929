import type { Lab } from '../../../app/model/lab.ts';
import type { Step } from '../../../app/model/wash-plan.ts';
import { dryStep } from './dry-step.ts';
import { darkestSlots, placesToLift, placesToSplatter, rowsOver } from './finishing-places.ts';
import { accentsStep, lastLookStep, liftStep, splatterStep } from './finishing-steps.ts';
import { inPassage } from './in-passage.ts';
import { lastLightsStep } from './last-lights-step.ts';
import { type Masked, masked, maskStep, unmaskStep } from './mask-steps.ts';
import { passageOrder } from './passage-order.ts';
import type { PlanFacts } from './plan-facts.ts';
import { prepareStep, puddlesStep, transferStep } from './preparing-steps.ts';
import type { StepDraft } from './step-draft.ts';
import { washStep } from './wash-step.ts';
import { washTechnique } from './wash-technique.ts';

/** A draft, and what it makes of the slots it paints. */
interface Ordered {
  readonly draft: StepDraft;
  readonly paints: readonly (readonly [slot: number, lab: Lab])[];
}

const plain = (draft: StepDraft): Ordered => ({ draft, paints: [] });

function washSteps(facts: PlanFacts): Ordered[] {
  const order = passageOrder(facts);
  return order.passages.flatMap(({ passage, washes }, at) =>
    washes.map((wash, n) => {
      const technique = washTechnique(facts, wash, washes.slice(0, n));
      const draft = washStep(facts, passage, wash, washes.length, technique);
      return {
        draft: inPassage(facts, order, draft, at, n),
        paints: wash.slots.map((slot, i) => [slot, wash.after[i] as Lab] as const),
      };
    }),
  );
}

/** The last row each of some slots was painted with, every row once. */
const lastRows = (facts: PlanFacts, slots: readonly number[]) => [
  ...new Set(slots.flatMap((i) => rowsOver(facts, i).at(-1) ?? [])),
];

function finishing(facts: PlanFacts, mask: Masked | null): Ordered[] {
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
  return steps.map(plain);
}

const leavesWet = (draft: StepDraft): boolean => draft.dryMinutes[1] > 0;

/** Puts a drying check after every wash, and before whatever needs dry paper on a wet sheet. */
function withDrying(facts: PlanFacts, steps: readonly Ordered[]): Ordered[] {
  const all: Ordered[] = [];
  let wet: string | undefined;
  for (const step of steps) {
    if (wet !== undefined) all.push(plain(dryStep(facts, wet)));
    all.push(step);
    wet = leavesWet(step.draft) ? step.draft.key : undefined;
  }
  return all;
}

/**
 * The steps in order, by the rules R1 to R21: prepare, puddles, transfer, mask, washes from light to dark with
 * drying checks, unmask, lifting, splatter, accents, last lights, last look. Every step carries the dry colour of
 * every slot after it; whites are the paper throughout.
 */
export function orderSteps(facts: PlanFacts, paper: Lab): Step[] {
  const washes = washSteps(facts);
  const mask = masked(
    facts,
    washes.some(({ draft }) => draft.technique === 'wet-in-wet'),
  );
  const start = [prepareStep(facts), puddlesStep(facts), transferStep(facts)];
  if (mask) start.push(maskStep(mask));
  const steps = withDrying(facts, [...start.map(plain), ...washes, ...finishing(facts, mask)]);
  let sheet: readonly Lab[] = facts.slots.map(() => paper);
  return steps.map(({ draft, paints }, i) => {
    if (paints.length > 0) {
      const next = [...sheet];
      for (const [slot, lab] of paints) next[slot] = lab;
      sheet = next;
    }
    return { ...draft, n: i + 1, after: sheet };
  });
}

import type { Lab } from '../../../app/model/lab.ts';
import type { Step } from '../../../app/model/wash-plan.ts';
import { defaultPaperLab } from '../optics/default-paper.ts';
import { dryKeyOf, dryStep } from './dry-step.ts';
import { draftOfWash } from './edits/draft-of-wash.ts';
import type { LaidRow } from './lay-steps.ts';
import { laySteps } from './lay-steps.ts';
import { passageOrder } from './passage-order.ts';
import { placedRows } from './placed-rows.ts';
import type { PlanFacts } from './plan-facts.ts';
import type { PlanWork } from './plan-work.ts';
import { plannedWork } from './planned-work.ts';
import type { StepDraft } from './step-draft.ts';
import { withHandling } from './touches/with-handling.ts';

const leavesWet = (draft: StepDraft): boolean => draft.dryMinutes[1] > 0;

/** Puts a drying check after every wash before the next thing is done, those left out apart. */
function withDrying(
  facts: PlanFacts,
  drafts: readonly StepDraft[],
  leftOut: ReadonlySet<string>,
): StepDraft[] {
  const all: StepDraft[] = [];
  let wet: string | undefined;
  for (const draft of drafts) {
    if (wet !== undefined && draft.kind !== 'dry' && !leftOut.has(dryKeyOf(wet))) {
      all.push(dryStep(facts, wet));
    }
    all.push(draft);
    wet = leavesWet(draft) ? draft.key : undefined;
  }
  return all;
}

/** Steps in order, and what became of the rows. */
export interface OrderedSteps {
  readonly steps: readonly Step[];
  readonly rows: ReadonlyMap<string, LaidRow>;
}

/** Work as it stands made into steps with drying checks, those left out apart. */
export function draftsOfWork(
  facts: PlanFacts,
  work: readonly PlanWork[],
  leftOut: ReadonlySet<string>,
): StepDraft[] {
  const order = passageOrder(facts);
  const drafts = work
    .filter(({ key }) => !leftOut.has(key))
    .map((one) => (one.kind === 'wash' ? draftOfWash(facts, order, one) : one.draft))
    .map((draft) => withHandling(facts, draft));
  return withDrying(facts, drafts, leftOut);
}

/** Drafts numbered, each with the sheet after it. */
export function laidDrafts(facts: PlanFacts, drafts: readonly StepDraft[]): OrderedSteps {
  const laid = laySteps(drafts, placedRows(facts), facts.slots, facts.paints, defaultPaperLab);
  const steps = drafts.map((draft, i) => ({
    ...draft,
    n: i + 1,
    after: laid.after[i] as readonly Lab[],
  }));
  return { steps, rows: laid.rows };
}

/**
 * The steps as planned, by the rules R1 to R21, with a drying check wherever a wash must dry. Every step carries
 * the dry colour of every slot after it; whites are the paper throughout.
 */
export const orderSteps = (facts: PlanFacts): readonly Step[] =>
  laidDrafts(facts, draftsOfWork(facts, plannedWork(facts), new Set())).steps;

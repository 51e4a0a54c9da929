import type { PlanEdit } from '../decisions/plan-edit.ts';
import { defaultPaperLab } from '../paint/colour-of-washes.ts';
import { applyEdits, applyMixEdits, type EditedWork } from './edits/apply-edits.ts';
import { draftWash } from './edits/draft-wash.ts';
import { leavesWet, liesElsewhere, type Mix, type Step, type WashPlan } from './plan.ts';
import { type PlanFacts, plannedMixes } from './plan-facts.ts';
import { ruleLimitsOf, withConsequences } from './rules/check-rules.ts';
import {
  applyStepsToSheet,
  type LaidRow,
  placedRows,
  updateLaidColours,
} from './steps/apply-steps-to-sheet.ts';
import { draftSteps, type PlanWork } from './steps/draft-steps.ts';
import { mixNotes } from './steps/mix-notes.ts';
import { passageOrder } from './steps/passage-order.ts';
import { withCautions } from './steps/step-cautions.ts';
import { dryKeyOf, dryStep, type StepDraft } from './steps/step-draft.ts';
import { withHandling } from './techniques/step-handling.ts';

/** Inserts a drying check between every step that leaves the sheet wet and the next, except checks she left out. */
function withDrying(
  facts: PlanFacts,
  drafts: readonly StepDraft[],
  leftOut: ReadonlySet<string>,
): StepDraft[] {
  const all: StepDraft[] = [];
  let wet: StepDraft | undefined;
  for (const draft of drafts) {
    const waits = draft.kind !== 'dry' && !liesElsewhere(wet, draft);
    if (wet && waits && !leftOut.has(dryKeyOf(wet.key))) {
      all.push(dryStep(facts, wet.key));
    }
    all.push(draft);
    wet = leavesWet(draft) ? draft : undefined;
  }
  return all;
}

/** Steps in order, and the mixes as laid by them. */
interface OrderedSteps {
  readonly steps: readonly Step[];
  readonly rows: ReadonlyMap<string, LaidRow>;
}

/** Turns work into steps with drying checks, without the steps she left out. */
function draftsOfWork(
  facts: PlanFacts,
  work: readonly PlanWork[],
  leftOut: ReadonlySet<string>,
): StepDraft[] {
  const order = passageOrder(facts);
  const drafts = work
    .filter(({ key }) => !leftOut.has(key))
    .map((one) => (one.kind === 'wash' ? draftWash(facts, order, one) : one.draft))
    .map((draft) => withHandling(facts, draft));
  return withDrying(facts, drafts, leftOut);
}

/** Drafts numbered, each with the sheet after it. */
function laidDrafts(facts: PlanFacts, drafts: readonly StepDraft[]): OrderedSteps {
  const laid = applyStepsToSheet(
    drafts,
    placedRows(facts),
    facts.slots,
    facts.paints,
    defaultPaperLab,
  );
  const steps = drafts.map((draft, i) => ({
    ...draft,
    n: i + 1,
    after: laid.after[i],
  }));
  const cautious = { mixes: plannedMixes(facts), optics: facts.paints, weather: facts.weather };
  return { steps: withCautions(steps, cautious), rows: laid.rows };
}

/**
 * The steps as planned, by the rules R1 to R21, with a drying check wherever a wash must dry. Every step carries
 * the dry colour of every slot after it; whites are the paper throughout.
 */
export const orderSteps = (facts: PlanFacts): readonly Step[] =>
  laidDrafts(facts, draftsOfWork(facts, draftSteps(facts), new Set())).steps;

/** The mixes and the steps of a plan, in order. */
export interface OrderedWork {
  readonly mixes: readonly Mix[];
  readonly steps: readonly Step[];
  readonly leftOut: NonNullable<WashPlan['leftOut']>;
}

/**
 * The work of a solved plan as the rules order it, with her changes and what will happen because of them. `plain` are
 * the steps of these facts without changes, where they are known.
 */
export function orderWork(
  facts: PlanFacts,
  edits: readonly PlanEdit[] = [],
  plain: readonly Step[] = orderSteps(facts),
): OrderedWork {
  const { reading, slots, paints } = facts;
  const planned = { mixes: plannedMixes(facts), steps: plain };
  if (edits.length === 0) {
    return { ...planned, mixes: mixNotes(planned.mixes, reading, slots, paints), leftOut: [] };
  }
  const hers = applyMixEdits(facts, edits);
  const edited = applyEdits(hers, draftSteps(hers), edits);
  const { steps, rows } = laidDrafts(hers, draftsOfWork(hers, edited.work, edited.leftOut));
  const mixes = updateLaidColours(plannedMixes(hers), rows);
  const sheet = { paper: defaultPaperLab, slots, optics: paints };
  const limits = ruleLimitsOf(facts, planned.steps);
  return {
    mixes: mixNotes(mixes, reading, slots, paints),
    steps: withConsequences({ ...sheet, mixes, steps }, { ...sheet, ...planned }, limits),
    leftOut: titlesLeftOut(hers, edited),
  };
}

/** The steps she left out, drying checks among them, in the order they would stand in. */
function titlesLeftOut(facts: PlanFacts, { work, leftOut }: EditedWork): OrderedWork['leftOut'] {
  if (leftOut.size === 0) return [];
  const there = draftsOfWork(facts, work, new Set());
  const waits = new Set([...leftOut].map(dryKeyOf));
  // Where the wash itself is left out there is nothing to wait for.
  return there
    .filter(({ key }) => leftOut.has(key) && !waits.has(key))
    .map(({ key, title }) => ({ key, title }));
}

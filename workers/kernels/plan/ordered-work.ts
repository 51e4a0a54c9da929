import type { PlanEdit } from '../../../app/model/plan-edit.ts';
import type { Mix, Step, WashPlan } from '../../../app/model/wash-plan.ts';
import { defaultPaperLab } from '../optics/default-paper.ts';
import { dryKeyOf } from './dry-step.ts';
import { applyEdits, type EditedWork } from './edits/apply-edits.ts';
import { herMixes } from './edits/her-mixes.ts';
import { ruleLimitsOf } from './edits/rule-limits-of.ts';
import { withConsequences } from './edits/with-consequences.ts';
import { mixNotes } from './mix-notes.ts';
import { draftsOfWork, laidDrafts, orderSteps } from './order-steps.ts';
import { type PlanFacts, rowsOf } from './plan-facts.ts';
import { plannedWork } from './planned-work.ts';
import { rowsAsLaid } from './rows-as-laid.ts';

/** The mixes and the steps of a plan, in order. */
export interface OrderedWork {
  readonly mixes: readonly Mix[];
  readonly steps: readonly Step[];
  readonly leftOut: NonNullable<WashPlan['leftOut']>;
}

/** The work of a solved plan as the rules order it, with her changes and what will happen because of them. */
export function orderedWork(facts: PlanFacts, edits: readonly PlanEdit[] = []): OrderedWork {
  const { reading, slots, paints } = facts;
  const planned = { mixes: rowsOf(facts), steps: orderSteps(facts) };
  if (edits.length === 0) {
    return { ...planned, mixes: mixNotes(planned.mixes, reading, slots, paints), leftOut: [] };
  }
  const hers = herMixes(facts, edits);
  const edited = applyEdits(hers, plannedWork(hers), edits);
  const { steps, rows } = laidDrafts(hers, draftsOfWork(hers, edited.work, edited.leftOut));
  const mixes = rowsAsLaid(rowsOf(hers), rows);
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

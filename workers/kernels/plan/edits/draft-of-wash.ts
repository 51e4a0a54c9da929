import { inPassage } from '../in-passage.ts';
import type { PassageOrder } from '../passage-order.ts';
import type { PlanFacts } from '../plan-facts.ts';
import type { WashWork } from '../plan-work.ts';
import type { StepDraft } from '../step-draft.ts';
import { washStep } from '../wash-step.ts';
import { changedWords } from './changed-words.ts';

/** The step of a wash, as planned or as she changed it. */
export function draftOfWash(facts: PlanFacts, order: PassageOrder, work: WashWork): StepDraft {
  const at = order.passages.findIndex(({ passage }) => passage === work.passage);
  const washes = order.passages[at]?.washes ?? [];
  const n = washes.findIndex(({ wash }) => wash === work.wash.wash);
  const draft = washStep(facts, work.passage, work.wash, washes.length, work.technique);
  return changedWords(facts, work, inPassage(facts, order, draft, at, n));
}

import { changesInWords, stepChanges } from '../../model/step-changes.ts';
import type { WashPlan } from '../../model/wash-plan.ts';
import { wetAfter } from '../../model/wet-after.ts';
import { wetLook } from '../../model/wet-look.ts';
import type { StageView } from './stage-layers.ts';

/** How much darker the wet sheet looks, by the largest shapes of the step. */
function wetInWords(plan: WashPlan, index: number): string {
  const step = plan.steps[index];
  const [largest] = [...(step?.slots ?? [])].sort(
    (one, two) => (plan.slots[two]?.share ?? 0) - (plan.slots[one]?.share ?? 0),
  );
  const dry = largest === undefined ? undefined : step?.after[largest];
  if (step?.kind !== 'wash' || largest === undefined || !dry) {
    return 'Nothing is washed in this step: the sheet is as when dry.';
  }
  const wet = wetAfter(plan, step)[largest] ?? dry;
  const words = wetLook(dry, wet);
  return `${words[0]?.toUpperCase()}${words.slice(1)} in the largest shapes: judge it dry.`;
}

/** What is to be known of a view of a stage; empty where it speaks for itself. */
export function stageWords(plan: WashPlan, index: number, view: StageView): string {
  if (view === 'wet') return wetInWords(plan, index);
  if (view === 'changes') return changesInWords(stepChanges(plan, index));
  if (view === 'where')
    return 'The figures point at the largest shapes, the largest first: big before small.';
  return '';
}

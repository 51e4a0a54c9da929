import { crispAcross } from './crisp-across.ts';
import { isMostlyLost } from './passage-line.ts';
import type { PassageOrder } from './passage-order.ts';
import type { PlanFacts } from './plan-facts.ts';
import type { StepDraft } from './step-draft.ts';

/** Put before what is to be watched for anyway. */
const watching = (draft: StepDraft, words: readonly string[], rules: readonly string[]) => ({
  ...draft,
  watch: [...words, draft.watch].filter(Boolean).join(' '),
  rules: [...draft.rules, ...rules],
});

/** Ground and subject painted as one: the line is not stopped at, but where it is crisp. */
function together(
  facts: PlanFacts,
  { passages, said }: PassageOrder,
  draft: StepDraft,
  wash: number,
): StepDraft {
  const stop = crispAcross(facts, draft.slots, passages[0]?.washes.slice(wash + 1) ?? []);
  if (wash > 0 && stop === '') return draft;
  const across = wash === 0 ? [said, 'Paint across the line while it is wet.'] : [];
  return watching(draft, [...across, stop], ['R18']);
}

/**
 * A wash of a sheet in passages: why this passage comes first, and what to do at the line (R18).
 * `passage` and `wash` count from 0 in the order they are painted.
 */
export function inPassage(
  facts: PlanFacts,
  order: PassageOrder,
  draft: StepDraft,
  passage: number,
  wash: number,
): StepDraft {
  const { passages, inPlan, said, cutRound } = order;
  if (!inPlan) return draft;
  if (inPlan.painted === 'together') return together(facts, order, draft, wash);
  const name = passages[0]?.passage === 'ground' ? 'ground' : 'subject';
  const atLine = isMostlyLost(facts.reading)
    ? `Most of the line is lost: there wet the dry edge of the ${name} and let the colour run over it.`
    : `The ${name} must be bone dry along the line.`;
  const words = wash === 0 ? [passage === 0 ? said : atLine] : [];
  return watching(draft, words, ['R18', ...(cutRound && passage > 0 ? ['R20'] : [])]);
}

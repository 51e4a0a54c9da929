import type { PlanFacts } from '../plan-facts.ts';
import type { StepDraft } from '../step-draft.ts';
import { boardFor } from './board-for.ts';
import { brushFor } from './brush-for.ts';
import { touchesOf } from './touches-of.ts';

/** A draft with how it is done: the smaller techniques, the brush, how the board lies. */
export function withHandling(facts: PlanFacts, draft: StepDraft): StepDraft {
  const touches = touchesOf(facts, draft);
  const brush = brushFor(facts, draft);
  const board = boardFor(facts, draft);
  const rules = new Set(draft.rules);
  if (touches.some(({ technique }) => technique === 'negative painting')) rules.add('R20');
  if (touches.some(({ technique }) => technique === 'water drops')) rules.add('R13').add('R21');
  if (touches.some(({ technique }) => technique === 'lifting')) rules.add('R11');
  if (touches.some(({ technique }) => technique === 'charging')) rules.add('R6');
  // Begun at its strong side, a graded wash does not go from top to bottom of itself.
  const graded = touches.some(({ technique }) => technique === 'graded wash');
  return {
    ...draft,
    ...(graded && { prompt: draft.prompt.replace(', top to bottom.', '.') }),
    ...(touches.length > 0 && { touches }),
    ...(brush && { brush }),
    ...(board && { board }),
    rules: [...rules],
  };
}

import type { PassageOrder } from './passage-order.ts';
import type { PlanFacts } from './plan-facts.ts';
import type { StepDraft } from './step-draft.ts';

/** From this share on the line between the passages is mostly lost (own figure). */
const mostlyLost = 0.5;

/** Share of the line between the passages, by length, that is lost. */
function lostShare({ reading, slots }: PlanFacts): number {
  let lost = 0;
  let all = 0;
  for (const border of reading.borders) {
    if (slots[border.a]?.passage === slots[border.b]?.passage) continue;
    all += border.lengthMm;
    lost += border.lengthMm * border.lost;
  }
  return all > 0 ? lost / all : 0;
}

/**
 * A wash of a sheet in passages: why this passage comes first, and what to do at the line (R18).
 * `passage` and `wash` count from 0 in the order they are painted.
 */
export function inPassage(
  facts: PlanFacts,
  { passages, why, cutRound }: PassageOrder,
  draft: StepDraft,
  passage: number,
  wash: number,
): StepDraft {
  if (passages.length < 2) return draft;
  const name = passages[0]?.passage === 'ground' ? 'ground' : 'subject';
  const atLine =
    lostShare(facts) > mostlyLost
      ? `Most of the line is lost: there wet the dry edge of the ${name} and let the colour run over it.`
      : `The ${name} must be bone dry along the line.`;
  const first = passage === 0 ? why : atLine;
  const later = cutRound && passage > 0;
  return {
    ...draft,
    watch: wash === 0 ? `${first} ${draft.watch}`.trim() : draft.watch,
    rules: [...draft.rules, 'R18', ...(later ? ['R20'] : [])],
  };
}

import { hoursInWords } from '../../../../app/model/evening-words.ts';
import type { PlanEdit } from '../../../../app/model/plan-edit.ts';
import type { TooLong } from '../../../../app/model/wash-plan.ts';
import type { PlanFacts } from '../plan-facts.ts';
import type { EveningWork } from './evening-work.ts';
import { type GivenUp, longest, workAt } from './given-up.ts';

/** Smaller sheets that are offered, share of the area. */
const shares = [1 / 2, 1 / 4];

/** The same picture on a smaller sheet: as many shapes, each smaller. */
function onSmaller(facts: PlanFacts, share: number): PlanFacts {
  const scale = Math.sqrt(share);
  const { widthMm, heightMm } = facts.reading.sheet;
  const sheet = { widthMm: widthMm * scale, heightMm: heightMm * scale };
  return { ...facts, reading: { ...facts.reading, sheet } };
}

/**
 * How long the plan takes even so, and on smaller sheets. There it is reckoned with as many shapes as on this one;
 * read anew it has rather fewer, so that it takes at most that. Drying does not get shorter.
 */
export function tooLong(
  facts: PlanFacts,
  level: GivenUp,
  { times }: EveningWork,
  edits: readonly PlanEdit[] | undefined,
): TooLong {
  const time = hoursInWords(longest(times));
  const text = `Even so ${times.length > 1 ? 'the longest evening' : 'it'} takes about ${time}.`;
  const smaller = shares.map((share) => {
    return { share, minutes: longest(workAt(onSmaller(facts, share), level, edits).times) };
  });
  return { text, smaller };
}

import type { PassagesChoice } from '../../../app/model/passages-choice.ts';
import type { PassagesInPlan } from '../../../app/model/wash-plan.ts';
import { parted } from './passage-line.ts';
import type { PlanFacts } from './plan-facts.ts';
import { type ProposedPassages, proposedPassages } from './proposed-passages.ts';

/** Which passage is painted first, and why. */
export interface PassageOrder {
  readonly passages: PlanFacts['passages'];
  /** Null where there is only one to paint. */
  readonly inPlan: PassagesInPlan | null;
  /** A few words of why, for the step it begins with; empty where there is only one. */
  readonly said: string;
  /** The one painted last is the darker ground: it is cut round the subject (R20). */
  readonly cutRound: boolean;
}

const names: Record<PassagesChoice, string> = {
  'ground first': 'Ground first',
  'subject first': 'Subject first',
  together: 'Ground and subject together',
};

/** Her own choice, and what was proposed in its place. */
const askedWhy = (order: PassagesChoice, { why }: ProposedPassages): string =>
  `${names[order]}, as you asked; proposed was ${why.charAt(0).toLowerCase()}${why.slice(1)}`;

/** The passages in the order she wants, or in the one proposed. */
export function passageOrder(facts: PlanFacts): PassageOrder {
  const proposed = proposedPassages(facts);
  const order = facts.passagesWish ?? proposed?.order;
  // Paints may be too pale to do anything for one of them.
  if (!proposed || !order || (order !== 'together' && facts.passages.length < 2)) {
    return { passages: facts.passages, inPlan: null, said: '', cutRound: false };
  }
  const isProposed = order === proposed.order;
  const why = isProposed ? proposed.why : askedWhy(order, proposed);
  const apart = order === 'subject first' ? [...parted].reverse() : parted;
  return {
    passages:
      order === 'together'
        ? facts.passages
        : apart.flatMap((name) => facts.passages.filter(({ passage }) => passage === name)),
    inPlan: { painted: order, proposed: proposed.order, why },
    said: isProposed ? why : `${names[order]}, as you asked.`,
    cutRound: order === 'subject first' && proposed.subjectLighter,
  };
}

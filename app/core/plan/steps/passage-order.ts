import type { PassagesChoice } from '../../decisions/plan-edit.ts';
import { isMostlyLost, parted, softShare } from '../../reading/edges/slot-borders.ts';
import type { Border } from '../../reading/reading.ts';
import type { Slot } from '../../reading/slot.ts';
import { passageWord } from '../../words/reading-words.ts';
import { adviseOnPassageLine } from '../edges/edge-advice.ts';
import type { PassagesInPlan } from '../plan.ts';
import type { PlanFacts } from '../plan-facts.ts';
import type { StepDraft } from './step-draft.ts';

interface ProposedPassages {
  readonly order: PassagesChoice;
  /** A sentence. */
  readonly why: string;
  /** The subject is the lighter: a ground painted after it is cut round it (R20). */
  readonly subjectLighter: boolean;
}

/** A ground softer than the subject by this share of its borders is painted first (own). */
const clearlySofter = 0.15;
/** So much lighter, planned L*, and a passage goes first (own). */
const clearlyLighter = 5;

type Facts = Pick<PlanFacts, 'reading' | 'slots'>;

/** The slots as planned, each in the passage it has in the picture, however it is painted. */
const inPicture = ({ reading, slots }: Facts): Slot[] =>
  slots.map((slot, i) => ({ ...slot, passage: reading.slots[i]?.passage ?? slot.passage }));

/** Both ground and subject have something to paint. */
const isParted = (slots: readonly Slot[]): boolean =>
  parted.every((name) =>
    slots.some(({ passage, reserve, share }) => passage === name && !reserve && share > 0),
  );

function inside(borders: readonly Border[], slots: readonly Slot[], passage: string): Border[] {
  return borders.filter(
    ({ a, b }) => slots[a]?.passage === passage && slots[b]?.passage === passage,
  );
}

function meanLightness(slots: readonly Slot[], passage: string): number {
  const own = slots.filter((slot) => slot.passage === passage && !slot.reserve);
  const area = own.reduce((sum, { share }) => sum + share, 0);
  return own.reduce((sum, { share, target }) => sum + share * target[0], 0) / Math.max(1e-9, area);
}

/**
 * Together where their line is mostly lost. Else ground first where it is soft and the subject crisp; else the
 * lighter passage, so that the darker one sets the edge between them; else the ground. Common practice, no source
 * (R18). Null where not both have something to paint.
 */
function proposedPassages(facts: Facts): ProposedPassages | null {
  const slots = inPicture(facts);
  if (!isParted(slots)) return null;
  const { borders } = facts.reading;
  const lighter = meanLightness(slots, 'subject') - meanLightness(slots, 'ground');
  const subjectLighter = lighter > clearlyLighter;
  if (isMostlyLost(facts.reading)) {
    return {
      order: 'together',
      why: 'Background and subject together: most of the line between them is lost.',
      subjectLighter,
    };
  }
  const groundFirst = (why: string): ProposedPassages => ({
    order: 'ground first',
    why: `Background first: ${why}.`,
    subjectLighter,
  });
  const softer =
    softShare(inside(borders, slots, 'ground')) - softShare(inside(borders, slots, 'subject'));
  if (softer > clearlySofter) return groundFirst('it is soft and the subject crisp');
  if (subjectLighter) {
    return {
      order: 'subject first',
      why: 'Subject first: it is the lighter; the darker background is then cut round it.',
      subjectLighter,
    };
  }
  if (lighter < -clearlyLighter) return groundFirst('it is the lighter, the subject sets the edge');
  return groundFirst('neither is softer or lighter, and the subject is easier to place on it');
}

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
  'ground first': 'Background first',
  'subject first': 'Subject first',
  together: 'Background and subject together',
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

/** Puts sentences in front of what the step says to watch for, and adds rules. */
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
  const stop = adviseOnPassageLine(facts, draft.slots, passages[0]?.washes.slice(wash + 1) ?? []);
  if (wash > 0 && stop === '') return draft;
  const across = wash === 0 ? [said, 'Paint across the line while it is wet.'] : [];
  return watching(draft, [...across, stop], ['R18']);
}

/**
 * A wash of a sheet in passages: why this passage comes first, and what to do at the line (R18).
 * `passage` and `wash` count from 0 in the order they are painted.
 */
export function addPassageWords(
  facts: PlanFacts,
  order: PassageOrder,
  draft: StepDraft,
  passage: number,
  wash: number,
): StepDraft {
  const { passages, inPlan, said, cutRound } = order;
  if (!inPlan) return draft;
  if (inPlan.painted === 'together') return together(facts, order, draft, wash);
  const name = passageWord(passages[0]?.passage ?? 'subject');
  const atLine = isMostlyLost(facts.reading)
    ? `Most of the line is lost: there wet the dry edge of the ${name} and let the colour run over it.`
    : `The ${name} must be bone dry along the line.`;
  const words = wash === 0 ? [passage === 0 ? said : atLine] : [];
  return watching(draft, words, ['R18', ...(cutRound && passage > 0 ? ['R20'] : [])]);
}

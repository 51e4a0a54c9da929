import type { PassagesChoice } from '../../decisions/plan-edit.ts';
import { isMostlyLost, parted, softShare } from '../../reading/edges/slot-borders.ts';
import type { Border } from '../../reading/reading.ts';
import type { Slot } from '../../reading/slot.ts';
import type { PassagesWhy } from '../../words/plan/evenings.ts';
import type { Said } from '../../words/plan/words.ts';
import { adviseOnPassageLine } from '../edges/edge-advice.ts';
import type { PassagesInPlan } from '../plan.ts';
import type { PlanFacts } from '../plan-facts.ts';
import type { StepDraft } from './step-draft.ts';

interface ProposedPassages {
  readonly order: PassagesChoice;
  readonly why: PassagesWhy;
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
  if (isMostlyLost(facts.reading)) return { order: 'together', why: 'line lost', subjectLighter };
  const groundFirst = (why: PassagesWhy): ProposedPassages => ({
    order: 'ground first',
    why,
    subjectLighter,
  });
  const softer =
    softShare(inside(borders, slots, 'ground')) - softShare(inside(borders, slots, 'subject'));
  if (softer > clearlySofter) return groundFirst('ground soft');
  if (subjectLighter) return { order: 'subject first', why: 'subject lighter', subjectLighter };
  return groundFirst(lighter < -clearlyLighter ? 'ground lighter' : 'neither');
}

/** Which passage is painted first, and why. */
export interface PassageOrder {
  readonly passages: PlanFacts['passages'];
  /** Null where there is only one to paint. */
  readonly inPlan: PassagesInPlan | null;
  /** A few words of why, for the step it begins with; null where there is only one. */
  readonly said: Said | null;
  /** The one painted last is the darker ground: it is cut round the subject (R20). */
  readonly cutRound: boolean;
}

/** The passages in the order she wants, or in the one proposed. */
export function passageOrder(facts: PlanFacts): PassageOrder {
  const proposed = proposedPassages(facts);
  const order = facts.passagesWish ?? proposed?.order;
  // Paints may be too pale to do anything for one of them.
  if (!proposed || !order || (order !== 'together' && facts.passages.length < 2)) {
    return { passages: facts.passages, inPlan: null, said: null, cutRound: false };
  }
  const isProposed = order === proposed.order;
  // Her own choice, and what was proposed in its place.
  const why: Said = isProposed
    ? { say: 'passages/proposed', why: proposed.why }
    : { say: 'passages/asked-instead', order, why: proposed.why };
  const apart = order === 'subject first' ? [...parted].reverse() : parted;
  return {
    passages:
      order === 'together'
        ? facts.passages
        : apart.flatMap((name) => facts.passages.filter(({ passage }) => passage === name)),
    inPlan: { painted: order, proposed: proposed.order, why },
    said: isProposed ? why : { say: 'passages/asked', order },
    cutRound: order === 'subject first' && proposed.subjectLighter,
  };
}

/** Puts sentences in front of what the step says to watch for, and adds rules. */
const watching = (
  draft: StepDraft,
  said: readonly Said[],
  rules: readonly string[],
): StepDraft => ({
  ...draft,
  watch: [...said, ...draft.watch],
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
  if (wash > 0 && stop.length === 0) return draft;
  const across: Said[] = wash === 0 && said ? [said, { say: 'line/across' }] : [];
  return watching(draft, [...across, ...stop], ['R18']);
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
  const atLine: Said = {
    say: isMostlyLost(facts.reading) ? 'line/lost' : 'line/dry',
    passage: passages[0]?.passage ?? 'subject',
  };
  const first = passage === 0 ? said : atLine;
  return watching(draft, wash === 0 && first ? [first] : [], [
    'R18',
    ...(cutRound && passage > 0 ? ['R20'] : []),
  ]);
}

import type { Slot } from '../../reading/slot.ts';
import type { Mix, SmallTechnique } from '../plan.ts';
import { type PlanFacts, plannedMixes } from '../plan-facts.ts';
import type { StepDraft } from '../steps/step-draft.ts';

/** A wash being painted, as the smaller techniques look at it. */
export interface WashInHand {
  readonly facts: PlanFacts;
  readonly draft: StepDraft;
  readonly passage: string;
  /** 1 is the first wash of the passage. */
  readonly wash: number;
  /** Slots it paints. */
  readonly painted: ReadonlySet<number>;
  /** The slots of this wash that no later wash of the passage paints. */
  readonly finished: ReadonlySet<number>;
  readonly sheetMm2: number;
}

/** Null for a draft that is no wash. */
export function washInHand(facts: PlanFacts, draft: StepDraft): WashInHand | null {
  if (draft.kind !== 'wash') return null;
  const [, passage = '', number] = draft.key.split('/');
  const wash = Number(number);
  const later = new Set(
    (facts.passages.find((one) => one.passage === passage)?.washes ?? [])
      .filter((one) => one.wash > wash)
      .flatMap(({ slots }) => slots),
  );
  const { widthMm, heightMm } = facts.reading.sheet;
  return {
    facts,
    draft,
    passage,
    wash,
    painted: new Set(draft.slots),
    finished: new Set(draft.slots.filter((i) => !later.has(i))),
    sheetMm2: widthMm * heightMm,
  };
}

export const slotAt = ({ facts }: WashInHand, index: number): Slot => facts.slots[index];

/** The mix that paints a slot in this wash. */
export function mixAtSlot({ facts, draft }: WashInHand, index: number): Mix | undefined {
  const slot = facts.slots[index];
  return plannedMixes(facts).find(
    ({ id, passage, family }) =>
      draft.mixes.includes(id) && passage === slot?.passage && family === slot.family,
  );
}

/** A technique proposed for a step because the reading calls for it. */
export interface TechniqueProposal {
  readonly smallTechnique: SmallTechnique;
  /** Share of the sheet it applies to, 0..1; proposals with a larger share come first. */
  readonly share: number;
  /** She has decided it herself: it is never left out. */
  readonly hers?: boolean;
}

/** Looks whether a wash calls for one technique; null where it does not. */
export type TechniqueDetector = (wash: WashInHand) => TechniqueProposal | null;

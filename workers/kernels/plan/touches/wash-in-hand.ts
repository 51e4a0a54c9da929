import type { Slot } from '../../../../app/model/slot.ts';
import type { Mix } from '../../../../app/model/wash-plan.ts';
import { type PlanFacts, rowsOf } from '../plan-facts.ts';
import type { StepDraft } from '../step-draft.ts';

/** A wash being painted, as the smaller techniques look at it. */
export interface WashInHand {
  readonly facts: PlanFacts;
  readonly draft: StepDraft;
  readonly passage: string;
  /** 1 is the first wash of the passage. */
  readonly wash: number;
  /** Slots it paints. */
  readonly painted: ReadonlySet<number>;
  /** Those of them no later wash of the passage paints: they get their last look here. */
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

export const slotAt = ({ facts }: WashInHand, index: number): Slot => facts.slots[index] as Slot;

/** The row that paints a slot in this wash. */
export function rowAt({ facts, draft }: WashInHand, index: number): Mix | undefined {
  const slot = facts.slots[index];
  return rowsOf(facts).find(
    ({ id, passage, family }) =>
      draft.mixes.includes(id) && passage === slot?.passage && family === slot.family,
  );
}
